/** What recordings that are no phone’s are said to come from. */
export const DEVICE_LABELS = {
  board: 'Board',
  csvFile: 'CSV file',
}
