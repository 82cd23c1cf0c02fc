/** Why a change of the light was not stored. */
export const LIGHT_STATE = {
  notStored: 'The light could not be stored.',
  writeWhy: (letters: number) =>
    `Write why this light may be shown, in ${letters} letters or more.`,
}
