/** Read in parts that every screen uses. */
export const COMMON = {
  cancel: 'Cancel',
  saveRefused: (file: string) => `The browser refused to save ${file}: allow downloads here.`,
  back: 'Back',
  documentTitle: (title: string) => `${title} – Movewright`,
  /** Data that no hand of a tester moved for. */
  marks: {
    generated: 'generated',
    simulated: 'simulated',
    imported: 'imported',
    board: 'board',
  },
  markCount: (count: number, mark: string) => `${count} ${mark}`,
}
