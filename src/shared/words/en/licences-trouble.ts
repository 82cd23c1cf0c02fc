/** Why the list of packages is not there. */
export const LICENCES_TROUBLE = {
  missing:
    'The list of packages is not here: it is part of the built app (third-party-licences.md).',
}
