/** What a tester is told when a take is doubted or a session cannot go on. */
export const SESSION_TROUBLE = {
  cutInTwo: (cuts: number) =>
    `There were ${cuts} movements with a rest between: one in a single go is asked for.`,
  nothingKept: 'Nothing was kept in this session, so there is no file of it.',
  deleted: (tester: string) => `Session ${tester} deleted.`,
  withdrew: (tester: string) =>
    `${tester} withdrew altogether since, so this session stays deleted.`,
  gone: 'This session is not on this phone any more: open the link once more to start anew.',
  unlike: (ratio: number, nearer: string | null) =>
    `It lies ${ratio.toFixed(1)} times as far from your others as is usual${nearer === null ? '' : `, and nearer to ${nearer}`}.`,
  notStored: 'The recording could not be stored. What was kept before is safe.',
}
