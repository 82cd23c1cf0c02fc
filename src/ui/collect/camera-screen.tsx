import { COLLECT_HOME } from '../../shared/words/en/collect-home'
import type { CollectState } from '../../state/collect'
import { Button } from '../common'
import { ReceiveScreen } from '../frames/receive-screen'
import { bringHome } from './bring-files'

/** Reads a session from the codes on a tester's screen, and shows what it would bring. */
export function CameraScreen({ collect }: { collect: CollectState }) {
  return (
    <ReceiveScreen
      back="#/collect"
      received={(content, next) => (
        <Received
          bytes={content.length}
          show={() => {
            bringHome(collect, [{ name: COLLECT_HOME.ways.byCamera, bytes: async () => content }])
            next()
          }}
        />
      )}
    />
  )
}

function Received({ bytes, show }: { bytes: number; show: () => void }) {
  return (
    <>
      <p role="status">{COLLECT_HOME.ways.whole(bytes)}</p>
      <Button tone="amber" big wide onClick={show}>
        {COLLECT_HOME.ways.seeIt}
      </Button>
    </>
  )
}
