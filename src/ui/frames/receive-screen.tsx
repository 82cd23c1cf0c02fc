import './frames.css'
import type { ComponentChildren } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import { FRAMES } from '../../shared/words/en/frames'
import type { ReceiveState } from '../../state/receive'
import { Button, Notice, Screen, useApp, useWakeLock } from '../common'

export interface ReceiveScreenProps {
  back: string
  /** What is done with bytes that came over. */
  received: (content: Uint8Array, next: () => void) => ComponentChildren
}

/** Reads the codes that another phone shows, until a session is whole. */
export function ReceiveScreen({ back, received }: ReceiveScreenProps) {
  const app = useApp()
  const [receive, setReceive] = useState<ReceiveState | null>(null)
  useEffect(() => {
    void app.openReceive().then(setReceive)
  }, [app])
  return receive === null ? null : <Receive receive={receive} back={back} received={received} />
}

function Receive({ receive, back, received }: ReceiveScreenProps & { receive: ReceiveState }) {
  const video = useRef<HTMLVideoElement>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const status = receive.status.value
  const content = receive.content.value
  useWakeLock(status === 'watching')
  useEffect(() => receive.stop, [receive])
  const start = async () => {
    if (video.current === null) return
    const started = await receive.start(video.current)
    setWrong(started.ok ? null : started.message)
  }
  return (
    <Screen
      title={FRAMES.receiveTitle}
      back={back}
      foot={
        content === null && status !== 'watching' ? (
          <Button
            tone="amber"
            big
            wide
            disabled={status === 'starting'}
            onClick={() => void start()}
          >
            {wrong === null ? FRAMES.startTheCamera : FRAMES.tryCameraAgain}
          </Button>
        ) : undefined
      }
    >
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
      {content === null ? <Watching receive={receive} /> : received(content, () => receive.clear())}
      <video
        ref={video}
        class="camera"
        hidden={status !== 'watching'}
        muted
        playsInline
        aria-label={FRAMES.cameraPicture}
      />
    </Screen>
  )
}

function Watching({ receive }: { receive: ReceiveState }) {
  const progress = receive.progress.value
  return (
    <div class="receive-words">
      <p>{FRAMES.receiveLead}</p>
      <p role="status">{seenText(receive)}</p>
      {progress !== null && (
        <progress value={progress.found} max={progress.blocks} aria-label={FRAMES.progressTitle} />
      )}
    </div>
  )
}

function seenText(receive: ReceiveState): string {
  const progress = receive.progress.value
  if (receive.foreign.value) return FRAMES.notOfSession
  if (progress !== null) return FRAMES.codesOver(progress.found, progress.blocks)
  return receive.status.value === 'watching' ? FRAMES.noCodeSeenYet : ''
}
