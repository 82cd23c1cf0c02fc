import { SHELL } from '../../shared/words/en/shell'

/** Shown instead of the app while another tab holds up the database; it goes by itself. */
export function StartHeldUp({ message }: { message: string }) {
  return (
    <main class="start-failure" aria-live="polite">
      <h1>{SHELL.waits}</h1>
      <p>{message}</p>
    </main>
  )
}

/** The one screen that works without the app's state: its database could not be opened. */
export function StartFailure({ error }: { error: unknown }) {
  return (
    <main class="start-failure">
      <h1>{SHELL.couldNotStart}</h1>
      <p>{error instanceof Error ? error.message : String(error)}</p>
      <p>{SHELL.takesAreUntouched}</p>
      <button type="button" class="button button-amber" onClick={() => location.reload()}>
        {SHELL.reload}
      </button>
    </main>
  )
}
