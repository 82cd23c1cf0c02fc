import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { App } from '../../state/app'

export const AppContext = createContext<App | null>(null)

/** The app's state. @throws when used outside of the shell, which is a bug. */
export function useApp(): App {
  const app = useContext(AppContext)
  if (app === null) throw new Error('useApp outside of AppContext')
  return app
}
