/** What the core answered when it refused. */
export const CORE_STATUS = {
  argument: 'The core was given a count out of its range.',
  otherVersion: 'The model was made for another version of the core: train it again.',
  rate: 'The output data rate is more than 5 % off the one the model was trained for: set that rate or train for this one.',
  sensitivity:
    'A sensitivity is more than 1 % off the one the model was trained for: set that range or train for this one.',
  modelField: 'A field of the model is out of its range: train it again.',
  buffer: 'A buffer given to the core is too small for the model.',
  teachFull: 'No slot for a taught gesture is free: forget one first.',
  teachKernels:
    'Only a model that compares with templates alone can be taught: choose templates on Prop and train again.',
  modelBytes: 'The model is cut short or damaged: train it again.',
  unknown: (status: number) => `The core answered with the unknown status ${status}.`,
}
