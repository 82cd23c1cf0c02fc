/** Why no model can be made of these takes. */
export const TRAINING_TROUBLE = {
  noTakes: 'There are no takes to train on: record some of each gesture.',
  noMovement:
    'No movement was found in any take: check that the sensor was running, or record stronger movements.',
  overBudget: (bytes: number) =>
    `One template of each gesture is more than the ${bytes} bytes the target leaves for the model: raise the budget or lower the length.`,
}
