import type { CDPSession } from 'playwright-core'

type Session = Pick<CDPSession, 'send'>

/** Value of an expression in the page. Counts as no tap, unlike Playwright's `evaluate`. */
export async function evaluate<T>(session: Session, expression: string): Promise<T> {
  const { result, exceptionDetails } = await session.send('Runtime.evaluate', {
    expression,
    awaitPromise: true,
    returnByValue: true,
    userGesture: false,
  })
  if (exceptionDetails !== undefined) {
    const { text, exception } = exceptionDetails
    throw new Error(`In the page: ${exception?.description ?? text}`)
  }
  return result.value as T
}

/** Waits until an expression in the page is true. */
export async function waitUntil(
  session: Session,
  expression: string,
  timeoutMs = 10_000,
): Promise<void> {
  const endMs = performance.now() + timeoutMs
  while (!(await evaluate<boolean>(session, `Boolean(${expression})`))) {
    if (performance.now() > endMs) {
      throw new Error(`Not true within ${timeoutMs} ms: ${expression}`)
    }
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
}
