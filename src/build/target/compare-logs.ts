export interface Agreement {
  agreed: number
  of: number
  /** First line that differs, as a sentence; null when all agree. */
  difference: string | null
}

/** Compares logs vector by vector. */
export function compareLogs(found: string, expected: string): Agreement {
  const wanted = byVector(expected)
  const had = byVector(found)
  const names = [...wanted.keys()].filter((name) => name !== '')
  const agreed = names.filter((name) => had.get(name) === wanted.get(name)).length
  if (found === expected) return { agreed, of: names.length, difference: null }
  const [lines, expectedLines] = [found.split('\n'), expected.split('\n')]
  const at = expectedLines.findIndex((line, index) => line !== lines[index])
  const line = at < 0 ? expectedLines.length : at
  const said = lines[line] ?? '(nothing)'
  return {
    agreed,
    of: names.length,
    difference: `line ${line + 1}: expected "${expectedLines[line] ?? '(nothing)'}", found "${said}"`,
  }
}

/** Lines of each vector by its name; what stands before the first under ''. */
function byVector(log: string): Map<string, string> {
  const found = new Map<string, string>()
  let name = ''
  for (const line of log.split('\n')) {
    if (line === 'done') name = ''
    else if (line.startsWith('vector ')) name = line
    found.set(name, `${found.get(name) ?? ''}${line}\n`)
  }
  return found
}
