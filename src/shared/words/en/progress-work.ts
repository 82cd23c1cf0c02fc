/** What training, measuring and comparing are doing. */
export const WORK_PROGRESS = {
  conditioning: 'conditioning the recordings',
  counting: 'counting',
  cuttingTakes: 'Cutting takes',
}
