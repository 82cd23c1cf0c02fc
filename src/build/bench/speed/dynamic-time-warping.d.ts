declare module 'dynamic-time-warping' {
  export default class DynamicTimeWarping<Point> {
    constructor(a: Point[], b: Point[], distance: (p: Point, q: Point) => number)
    getDistance(): number
    getPath(): [number, number][]
  }
}
