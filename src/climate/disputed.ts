/** Counties where two published county tables give different zones for the editions up to 2018. */

/**
 * FIPS number to the zone in the other table. Not settled against the text of the code.
 *
 * @see a second county table of the Pacific Northwest National Laboratory, compared with that behind PNNL-33270: the
 * two agree in 3,099 of 3,106 counties (seen at second hand)
 */
export const OTHER_ZONE_2015: ReadonlyMap<string, string> = new Map([
  ['06001', '3B'], // Alameda, California
  ['06069', '3B'], // San Benito, California
  ['22059', '2A'], // LaSalle, Louisiana
  ['48049', '3B'], // Brown, Texas
  ['48171', '3B'], // Gillespie, Texas
  ['48429', '3B'], // Stephens, Texas
  ['51520', '4A'], // Bristol, Virginia: zone 4 without its letter here
]);
