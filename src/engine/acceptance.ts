/** Who may accept a difference: anybody can write a role under `acceptedBy`, and only some roles can change a contract. */
import type { Deviation, Project } from '../model/types.js';

/** Roles that accept differences where the project names none (common practice, no source). */
export const HABITUAL_ROLES: readonly string[] = [
  'architect',
  'architect of record',
  'engineer of record',
  'building official',
  'owner',
  "owner's representative",
];

/** Roles that may accept differences in a project: those it names, else the habitual ones. */
export function acceptingRoles(project: Pick<Project, 'acceptingRoles'> | undefined): readonly string[] {
  return project?.acceptingRoles?.map((role) => role.value) ?? HABITUAL_ROLES;
}

/** `The  Owner’s Representative` is `owner's representative`. */
const plainRole = (role: string): string =>
  role.replaceAll('\u2019', "'").trim().replace(/\s+/g, ' ').toLowerCase().replace(/^the /, '');

/**
 * The role that accepted an entry, when it is one that may.
 *
 * @param roles as {@link acceptingRoles} gives them
 * @returns the role as written; `undefined` when nobody is named, or a role that may not accept
 */
export function acceptedUnder(
  { acceptedBy }: Pick<Deviation, 'acceptedBy'>,
  roles: readonly string[],
): string | undefined {
  if (acceptedBy === undefined) return undefined;
  const role = plainRole(acceptedBy.value);
  return roles.some((one) => plainRole(one) === role) ? acceptedBy.value : undefined;
}

/** `who may not accept it; architect or engineer of record may`, to follow a role. */
export const mayNot = (roles: readonly string[]): string => `who may not accept it; ${rolesText(roles)} may`;

/** `architect, engineer of record or owner`. */
export function rolesText(roles: readonly string[]): string {
  const last = roles.at(-1) ?? 'nobody';
  return roles.length < 2 ? last : `${roles.slice(0, -1).join(', ')} or ${last}`;
}
