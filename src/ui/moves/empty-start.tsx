import { useState } from 'preact/hooks'
import { MOVES } from '../../shared/words/en/moves'
import { Button, Notice, Progress, Screen, useApp } from '../common'
import { NewLibrary } from '../library/new-library'
import { OpenLibraryFile } from '../library/open-library-file'
import { FirstCards } from './first-cards'

/** What a first visitor sees: what this is, and three ways in. */
export function EmptyStart() {
  const app = useApp()
  const [naming, setNaming] = useState(false)
  const demo = app.library.demoJob.value
  return (
    <Screen title={MOVES.movewright} bare>
      <div class="start">
        <div class="start-words">
          <h1>{MOVES.movewright}</h1>
          <p class="start-lead">{MOVES.lead}</p>
          <FirstCards />
        </div>
        <div class="start-ways">
          {demo.state === 'running' ? (
            <Progress progress={demo.progress} cancel={demo.cancel} />
          ) : (
            <Button
              tone={naming ? 'plain' : 'amber'}
              big
              wide
              onClick={() => void app.library.addDemo()}
            >
              {MOVES.loadDemo}
            </Button>
          )}
          <p class="quiet small">{MOVES.demoIsGenerated}</p>
          {demo.state === 'failed' && (
            <Notice tone="trouble" live>
              {demo.message}
            </Notice>
          )}
          {naming ? (
            <NewLibrary onCancel={() => setNaming(false)} />
          ) : (
            <Button big wide onClick={() => setNaming(true)}>
              {MOVES.startOwn}
            </Button>
          )}
          <OpenLibraryFile />
        </div>
        <p class="quiet small">{MOVES.staysOnPhone}</p>
      </div>
    </Screen>
  )
}
