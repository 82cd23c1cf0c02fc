import { type Failure, fail, ok, type Result } from '../shared/model/result'
import { CAMERA } from '../shared/words/en/camera'

/** Fine codes need pixels, and a phone's camera has them. */
const WANTED: MediaStreamConstraints = {
  audio: false,
  video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 960 } },
}

/**
 * The camera on the phone's back, or whichever there is. Must be called from a tap: the browser asks.
 * Codes: 'camera/insecure', 'camera/denied', 'camera/none', 'camera/busy'.
 */
export async function openCamera(): Promise<Result<MediaStream>> {
  const devices = globalThis.navigator.mediaDevices as MediaDevices | undefined
  if (devices === undefined) {
    return fail('camera/insecure', CAMERA.insecure)
  }
  try {
    return ok(await devices.getUserMedia(WANTED))
  } catch (error) {
    return refusal(error instanceof DOMException ? error.name : '')
  }
}

export function closeCamera(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop()
}

function refusal(name: string): Failure {
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return fail('camera/denied', CAMERA.refused)
    case 'NotFoundError':
    case 'OverconstrainedError':
      return fail('camera/none', CAMERA.none)
    default:
      return fail('camera/busy', CAMERA.notStarted)
  }
}
