/** A stretch of samples that the segmenter cut out, as charts mark it. */
export interface Cut {
  /** First sample and one past the last, in the samples of the chart. */
  start: number
  end: number
  /** Answer, for the direct label. */
  text: string
  /** Answers are drawn solid, rejections dashed. */
  rejected: boolean
}
