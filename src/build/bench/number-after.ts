/**
 * The whole number behind a flag of this command, or what is usual without the flag.
 * @throws Error when it is no whole number from `least` on
 */
export function numberAfter(flag: string, usual: number, least = 0): number {
  const at = process.argv.indexOf(flag)
  if (at < 0) return usual
  const value = Number(process.argv[at + 1])
  if (Number.isInteger(value) && value >= least) return value
  throw new Error(`${flag} needs a whole number from ${least}, such as ${flag} ${usual}.`)
}
