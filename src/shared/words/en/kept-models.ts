/** What is said of models that are kept for comparison, and of teaching. */
export const KEPT_MODELS = {
  gone: 'This model is no longer kept.',
  removed: 'The kept model is removed.',
  notMeasuredAlike:
    'One of these was not measured this way. Measure on Proof before you change anything.',
  cannotBeTaught:
    'This library’s model has kernel features, which cannot be taught: choose Templates on Prop.',
  notTaughtByButton:
    'Teaching here listens for motion, and this library’s movements are cut by a button: choose Motion on Prop, Training.',
  tallySetToNought: 'Tally set to nought.',
}
