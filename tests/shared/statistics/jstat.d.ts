declare module 'jstat' {
  const jstat: {
    chisquare: { inv(p: number, freedom: number): number }
    binomial: { cdf(k: number, n: number, p: number): number }
  }
  export default jstat
}
