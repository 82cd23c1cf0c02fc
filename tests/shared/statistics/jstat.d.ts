declare module 'jstat' {
  const jstat: { chisquare: { inv(p: number, freedom: number): number } }
  export default jstat
}
