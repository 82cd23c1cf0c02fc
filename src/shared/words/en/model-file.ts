/** What is wrong with the bytes of a model. */
export const MODEL_FILE = {
  damaged: 'The model is cut short or damaged: train or export it again.',
  otherVersion: (version: number, read: number) =>
    `The model has version ${version} and this app reads version ${read}: train it again.`,
  gesture: (number: number) => `gesture ${number}`,
}
