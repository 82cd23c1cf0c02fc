import { type Failure, fail, ok, type Result } from '../shared/model/result'

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
    return fail(
      'camera/insecure',
      'The browser gives the camera to secure pages only: open this page by its https address.',
    )
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
      return fail(
        'camera/denied',
        'The browser did not give this page the camera: allow the camera in the settings of this site and try again, or bring the session over as a file.',
      )
    case 'NotFoundError':
    case 'OverconstrainedError':
      return fail(
        'camera/none',
        'This device has no camera that the browser can use: bring the session over as a file.',
      )
    default:
      return fail(
        'camera/busy',
        'The camera could not be started: close other apps that use it and try again.',
      )
  }
}
