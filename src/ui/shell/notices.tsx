import { SHELL } from '../../shared/words/en/shell'
import type { Notice } from '../../state/app'
import { Button, Icon, useApp } from '../common'

import { PenLine } from './pen-line'
import { UpdateLine } from './update-line'

/** The lines at the bottom of the screen, with the way back where there is one. */
export function Notices() {
  const app = useApp()
  return (
    <div class="shell-notices" role="status">
      <UpdateLine />
      <PenLine />
      {app.notices.value.map((notice) => (
        <NoticeLine key={notice.id} notice={notice} />
      ))}
    </div>
  )
}

function NoticeLine({ notice }: { notice: Notice }) {
  const app = useApp()
  const { undo } = notice
  return (
    <div class={`shell-notice shell-notice-${notice.tone}`}>
      <p>{notice.text}</p>
      {undo !== undefined && (
        <Button
          onClick={() => {
            app.dismiss(notice.id)
            void undo()
          }}
        >
          {SHELL.undo}
        </Button>
      )}
      <Button tone="quiet" label={SHELL.closeMessage} onClick={() => app.dismiss(notice.id)}>
        <Icon name="cross" />
      </Button>
    </div>
  )
}
