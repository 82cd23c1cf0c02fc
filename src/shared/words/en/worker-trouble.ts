/** What became of work that a worker was to do. */
export const WORKER_TROUBLE = {
  cancelled: 'Cancelled.',
  timedOut: 'The recogniser did not answer in time and was started anew: try again.',
  crashed: 'The recogniser stopped unexpectedly and was started anew: try again.',
  failed: (message: string) => `The recogniser failed: ${message}`,
  jobNotOpen: 'This worker has not opened the job.',
  liveNotRunning: 'Live recognition is not running: start it again.',
  teachNotRunning: 'Teaching is not running: start it again.',
}
