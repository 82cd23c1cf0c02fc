import { type ReadonlySignal, signal } from '@preact/signals'
import { closeCamera, createCodeReader, openCamera } from '../camera'
import { FrameReceiver, type Received } from '../shared/frames/receiver'
import { ok, type Result } from '../shared/model/result'

/** Codes stand for a third of a second; each is looked at three times or so. */
const LOOK_EVERY_MS = 110

export interface ReceiveState {
  status: ReadonlySignal<'off' | 'starting' | 'watching'>
  /** Of the run seen last; null before the first code. */
  progress: ReadonlySignal<Received | null>
  /** The camera sees a code that is none of a session's, such as a join link. */
  foreign: ReadonlySignal<boolean>
  /** What came over, once it is whole. */
  content: ReadonlySignal<Uint8Array | null>
  /** From a tap: opens the camera, shows it in the video and reads codes until all are there. */
  start(video: HTMLVideoElement): Promise<Result<null>>
  /** Closes the camera; what was seen of a run stays for the next start. */
  stop(): void
  /** Forgets what came over, for the next phone. */
  clear(): void
}

/** Takes a session over from another phone's screen. */
export function createReceive(): ReceiveState {
  const status = signal<'off' | 'starting' | 'watching'>('off')
  const progress = signal<Received | null>(null)
  const foreign = signal(false)
  const content = signal<Uint8Array | null>(null)
  let receiver = new FrameReceiver()
  let stream: MediaStream | null = null

  const stop = () => {
    if (stream !== null) closeCamera(stream)
    stream = null
    status.value = 'off'
  }
  const see = (text: string) => {
    const seen = receiver.see(text)
    foreign.value = seen === 'foreign'
    progress.value = receiver.progress
    if (seen !== 'complete') return
    content.value = receiver.content()
    stop()
  }
  const watch = async (video: HTMLVideoElement, mine: MediaStream) => {
    const read = await createCodeReader()
    while (stream === mine) {
      const text = await read(video).catch(() => null)
      if (text !== null && stream === mine) see(text)
      await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS))
    }
  }
  return {
    status,
    progress,
    foreign,
    content,
    async start(video) {
      stop()
      status.value = 'starting'
      const opened = await openCamera()
      if (!opened.ok) {
        status.value = 'off'
        return opened
      }
      if (status.peek() !== 'starting') {
        closeCamera(opened.value)
        return ok(null)
      }
      stream = opened.value
      video.srcObject = stream
      await video.play().catch(() => undefined)
      status.value = 'watching'
      void watch(video, stream)
      return ok(null)
    },
    stop,
    clear() {
      receiver = new FrameReceiver()
      progress.value = null
      content.value = null
      foreign.value = false
    },
  }
}
