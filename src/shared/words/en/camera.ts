/** Why there is no picture of the camera. */
export const CAMERA = {
  insecure:
    'The browser gives the camera to secure pages only: open this page by its https address.',
  refused:
    'The browser did not give this page the camera: allow the camera in the settings of this site and try again, or bring the session over as a file.',
  none: 'This device has no camera that the browser can use: bring the session over as a file.',
  notStarted: 'The camera could not be started: close other apps that use it and try again.',
}
