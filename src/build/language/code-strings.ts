import { parseSync } from 'vite'

/** A string of a source file that might be read by people: not an address, a key or a comparison. */
export interface CodeString {
  kind: 'string' | 'template' | 'text'
  /** As it would be read; what a template puts in is a 0. */
  text: string
  /**
   * Attribute or property that it is the value of, however deep in choices; 'children' where it
   * stands in the middle of an element; else null.
   */
  of: string | null
  /** From 1. */
  line: number
  /** Where its letters stand in the source, quotation marks left out. */
  pieces: { start: number; end: number }[]
}

interface Node {
  type: string
  start: number
  end: number
  [key: string]: unknown
}

/** What stands between a value and the attribute or property that it is chosen for. */
const CHOICES = [
  ...['ConditionalExpression', 'LogicalExpression', 'JSXExpressionContainer', 'TSAsExpression'],
  ...['ParenthesizedExpression', 'TSSatisfiesExpression', 'ChainExpression'],
]
/** Calls whose strings are for the program: what is looked for, named or switched. */
const TECHNICAL_CALL =
  /\b(Intl\.\w+|toLocale\w*|startsWith|endsWith|includes|indexOf|split|replaceAll?|match|matchMedia|querySelector(All)?|closest|createElement|getElementById|getContext|addEventListener|removeEventListener|getPropertyValue|setAttribute|console\.\w+|RegExp|URL|(Range|Type)?Error|DOMException)$/

/** Every string of a TypeScript file that might be language. */
export function codeStrings(file: string, code: string): CodeString[] {
  const { program, errors } = parseSync(file, code)
  if (errors.length > 0) throw new Error(`${file} cannot be read: ${errors[0]?.message}`)
  const found: CodeString[] = []
  const lineOf = linesIn(code)
  visit(program as unknown as Node, [], (node, parents) => {
    const pieces = piecesOf(node, code)
    if (pieces.length === 0 || isTechnical(node, parents, code)) return
    const text = pieces.map(({ start, end }) => code.slice(start, end)).join('0')
    const line = lineOf(node.start)
    const kind =
      node.type === 'JSXText' ? 'text' : node.type === 'TemplateLiteral' ? 'template' : 'string'
    found.push({ kind, text, of: nameOfValue(node, parents), line, pieces })
  })
  return found
}

/** Lines of one source, from 1. */
function linesIn(code: string): (offset: number) => number {
  const ends = [...code.matchAll(/\n/g)].map(({ index }) => index)
  return (offset) => ends.filter((end) => end < offset).length + 1
}

function visit(node: Node, parents: Node[], see: (node: Node, parents: Node[]) => void): void {
  see(node, parents)
  const inside = [...parents, node]
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (isNode(child) && !isType(child)) visit(child, inside, see)
    }
  }
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'
}

/** Types say nothing to anybody once compiled; expressions with a type do. */
function isType({ type }: Node): boolean {
  return type.startsWith('TS') && !CHOICES.includes(type) && type !== 'TSNonNullExpression'
}

function piecesOf(node: Node, code: string): CodeString['pieces'] {
  if (node.type === 'Literal') {
    return typeof node.value === 'string' ? [{ start: node.start + 1, end: node.end - 1 }] : []
  }
  if (node.type === 'JSXText') return [{ start: node.start, end: node.end }]
  if (node.type !== 'TemplateLiteral') return []
  // Marks around a quasi are counted in by some parsers: its raw text says how long it is.
  return (node.quasis as (Node & { value: { raw: string } })[]).map((quasi) => {
    const start = code.indexOf(quasi.value.raw, quasi.start)
    return { start, end: start + quasi.value.raw.length }
  })
}

function isTechnical(node: Node, parents: Node[], code: string): boolean {
  const parent = parents[parents.length - 1]
  if (parent === undefined) return false
  if (/^(Import|Export)/.test(parent.type)) return true
  if (parent.type === 'Property' && parent.key === node) return true
  if (parent.type === 'BinaryExpression') return /^[!=]=|^in$/.test(String(parent.operator))
  if (parent.type === 'SwitchCase') return parent.test === node
  if (parent.type === 'MemberExpression') return parent.property === node
  if (parent.type === 'TaggedTemplateExpression') return true
  return parents.some((above, at) => isTechnicalCall(above, parents[at + 1] ?? node, code))
}

/** @param inside what leads on to the string: an argument, if this is the call it is given to */
function isTechnicalCall(above: Node, inside: Node, code: string): boolean {
  if (above.type !== 'CallExpression' && above.type !== 'NewExpression') return false
  const callee = above.callee as Node
  return inside !== callee && TECHNICAL_CALL.test(code.slice(callee.start, callee.end))
}

function nameOfValue(node: Node, parents: Node[]): string | null {
  let inside = node
  for (const above of [...parents].reverse()) {
    if (above.type === 'JSXAttribute' || (above.type === 'Property' && above.value === inside)) {
      const { name, value } = (above.name ?? above.key) as { name?: unknown; value?: unknown }
      return String(typeof name === 'string' ? name : (value ?? ''))
    }
    if (above.type === 'JSXElement' || above.type === 'JSXFragment') return 'children'
    if (!CHOICES.includes(above.type)) return null
    inside = above
  }
  return null
}
