import { render } from 'preact'
import { createApp } from './state/create-app'
import { startRouter } from './ui/common/router'
import { fetchAhead } from './ui/shell/later'
import { Shell } from './ui/shell/shell'
import { StartFailure, StartHeldUp } from './ui/shell/start-failure'
import './ui/theme'
import { followTheme } from './ui/theme/follow-theme'

const root = document.getElementById('app')
if (root !== null) {
  followTheme()
  startRouter()
  root.textContent = ''
  createApp((message) => render(<StartHeldUp message={message} />, root)).then(
    (app) => {
      render(<Shell app={app} />, root)
      void fetchAhead()
    },
    (error: unknown) => render(<StartFailure error={error} />, root),
  )
}
