/** The look of the page: a review letter with drawings, on screen and on paper. */
import { OPEN_NAME } from './names.js';

/** Text inside a CSS string. */
function quoted(value: string): string {
  return `"${value.replace(/[^A-Za-z0-9 .,:;-]/g, (c) => `\\${(c.codePointAt(0) ?? 0).toString(16)} `)}"`;
}

/** What stands at the head and foot of each printed page. */
export function running(title: string, action: string, version: string): string {
  return `@page{@top-left{content:${quoted(title)}}@top-right{content:${quoted(`Suggested action: ${action}`)}}@bottom-left{content:${quoted(`Lapwright ${version}. An aid to review; see the caution.`)}}@bottom-right{content:"Page " counter(page) " of " counter(pages)}}\n`;
}

export const STYLE = `
:root{--ink:#1a1a1a;--soft:#555;--line:#8a8a8a;--faint:#d9d9d9;--address:#0b4f8a;--chosen-edge:#b3261e;--chosen-fill:#fff4cf}
*{box-sizing:border-box}
html{scroll-padding-top:1rem}
body{margin:0 auto;max-width:100rem;padding:1.5rem 2rem 3rem;background:#fff;color:var(--ink);font:1rem/1.5 system-ui,sans-serif;overflow-wrap:break-word}
h1{margin:0 0 .75rem;font-size:1.75rem;line-height:1.2}
h2{margin:2.5rem 0 .5rem;padding-top:.75rem;border-top:2px solid var(--ink);font-size:1.3rem;line-height:1.3}
h3{margin:0 0 .4rem;font-size:1.05rem;line-height:1.3}
p{margin:.4rem 0 .8rem;max-width:75ch}
a{color:var(--address)}
code{font:.9em ui-monospace,monospace;overflow-wrap:anywhere}
:focus-visible{outline:3px solid var(--address);outline-offset:2px}
table{border-collapse:collapse;margin:.5rem 0 1rem;font-size:.925em}
th,td{padding:.3rem .9rem .3rem 0;border-bottom:1px solid var(--faint);text-align:left;vertical-align:top;font-weight:400}
thead th{border-bottom:1px solid var(--ink);font-weight:600;vertical-align:bottom}
#${OPEN_NAME} td:last-child{overflow-wrap:anywhere;min-width:13em}
header{display:grid;grid-template-columns:minmax(0,1fr) auto;column-gap:3rem;align-content:start}
header>*{grid-column:1}
header>table{grid-column:2;grid-row:1/span 12;margin-top:0}
header td:last-child,header th:last-child{text-align:right;font-variant-numeric:tabular-nums;padding-right:.2rem}
.count{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
thead .count{white-space:normal}
.some{font-weight:700}
ul,ol{margin:.2rem 0 .6rem;padding-left:1.4rem}
li:target{background:var(--chosen-fill)}
section>ul,section>ol,.fold ul{max-width:100ch}
section>ol>li{margin:.35rem 0}
.facts{color:var(--soft);font-size:.925em;max-width:none}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.skip{position:absolute;left:-100vw}
.skip:focus{position:static;display:inline-block;margin:.3rem 0;padding:.4rem .8rem;border:1px solid var(--ink);background:#fff}
summary{cursor:pointer;padding:.35rem 0;font-weight:600}
summary h2{display:inline-block;margin:0;padding:0;border:0}
.fold{margin-top:2.5rem;padding-top:.6rem;border-top:2px solid var(--ink)}
.quiet{margin:.3rem 0}
.date{white-space:nowrap}
.transmittal table{width:100%}
.transmittal td:nth-child(-n+2),.transmittal td:nth-child(4){white-space:nowrap}
.transmittal th:last-child{min-width:12em}
.transmittal td{padding:.2rem .7rem .2rem 0}
main.letter section>h3{margin-top:1.2rem}
main.letter section>h3+ul{list-style:none;padding:0}
main.letter section>h3+ul>li{margin:.35rem 0}
@media screen{.paper-only{display:none}}
.view{border-bottom:1px solid var(--faint)}
.paper{display:block;width:100%;height:auto}
.sheet{position:relative}
.numbers{overflow-x:auto;margin:0 0 .6rem}
.numbers summary{font-weight:400}
.numbers caption{text-align:left;padding:.2rem 0}
.numbers td,.numbers th{padding-right:.7rem;font-size:.9em}
.overlay{position:absolute;inset:0;width:100%;height:100%}
.hit{fill:transparent}
.ring,.rim{fill:none;opacity:var(--chosen,0)}
.rim{stroke:#fff;stroke-width:1.5}
.ring{stroke:var(--chosen-edge);stroke-width:.9}
.mark:hover .ring,.mark:focus-visible .ring,.mark:hover .rim,.mark:focus-visible .rim{opacity:1}
.mark:focus-visible{outline:none}
.way{fill:none;stroke:var(--chosen-edge);stroke-width:1.4;stroke-opacity:.55;stroke-linecap:round;opacity:var(--chosen,0);pointer-events:none}
.finding{margin:0 0 1rem;padding:.7rem 1rem .5rem;border:1px solid var(--faint);border-left:.45rem solid var(--ink);scroll-margin-top:1rem}
.is-warning{border-left-style:double}
.is-note{border-left-width:2px}
.finding:target{background:var(--chosen-fill);outline:3px solid var(--chosen-edge)}
.finding:focus{outline-offset:0}
.pick{display:flex;align-items:center;gap:.5rem;color:inherit;text-decoration:none}
.pick:hover span{text-decoration:underline}
.sign{flex:none;width:1.65rem;height:1.5rem;font-family:sans-serif}
dl{margin:.4rem 0}
dl div{display:grid;grid-template-columns:7.2em minmax(0,1fr);gap:.1rem .6rem;padding:.12rem 0;font-size:.925em}
dt{color:var(--soft)}
dd{margin:0}
dd ul{list-style:none;padding:0;margin:0}
dd ol{padding-left:1.3rem;margin:0}
@media screen{
.path ol{display:none}
.finding:target .path ol{display:block}
.finding:target .show{display:none}
}
@media screen and (min-width:75rem){
.beside{display:grid;grid-template-columns:minmax(0,54fr) minmax(0,46fr);gap:2rem;align-items:start}
.drawings{order:-1;position:sticky;top:.5rem;max-height:calc(100vh - 1rem);overflow:auto}
}
@media screen and (max-width:48rem){
body{padding:1rem}
dl div{grid-template-columns:minmax(0,1fr)}
nav,.fold,#${OPEN_NAME}{overflow-x:auto}
main>section>table{display:block;overflow-x:auto}
.view{overflow-x:auto}
.sheet{min-width:44rem}
}
@media print{
body{max-width:none;padding:0;font-size:9pt;line-height:1.35}
h1{font-size:17pt}
h2{font-size:12.5pt;margin-top:14pt;padding-top:5pt;border-top-width:1.2pt;break-after:avoid}
h3{font-size:10pt;margin-bottom:2pt}
h3,summary,.facts{break-after:avoid}
p{orphans:3;widows:3;margin:2pt 0 4pt}
a{color:inherit;text-decoration:none}
th,td{padding:1.5pt 8pt 1.5pt 0}
.skip,.screen,.show,.overlay{display:none}
.off-paper,.letter .findings,.letter nav{display:none}
.letter .detail:not(:has(.view:not(.off-paper))),.letter .facts{display:none}
header>ul{columns:2;padding-left:1rem}
.transmittal{break-after:page;font-size:8pt;line-height:1.25}
.transmittal h2{margin-top:4pt}
.transmittal td{padding:1pt 6pt 1pt 0}
.finding{break-inside:avoid;padding:4pt 8pt 3pt;margin-bottom:6pt}
.finding:target{outline:0;background:none}
.sign{width:14pt;height:13pt}
dl{margin:2pt 0}
dl div{padding:.5pt 0}
tr,li{break-inside:avoid}
section>table{break-inside:auto}
table:not(.transmittal table){break-inside:avoid}
thead{display:table-header-group}
details.view::details-content,details.fold::details-content{content-visibility:visible;display:block}
.view{border:0;break-inside:avoid;margin-bottom:8pt}
.view summary,.fold summary{list-style:none;padding:2pt 0}
.fold,.fold summary h2{margin-top:8pt}
.quiet:not([open]),.numbers:not([open]){display:none}
.paper{max-height:111mm;margin:auto}
.tall .paper{max-height:216mm}
.numeric .paper{max-height:228mm}
}
@page{size:auto;margin:20mm 15mm 18mm;@top-left{font:8pt sans-serif;color:#444}@top-right{font:8pt sans-serif;color:#444}@bottom-left{font:8pt sans-serif;color:#444}@bottom-right{font:8pt sans-serif;color:#444}}
`;
