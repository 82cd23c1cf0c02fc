/** Why no readings come from a motion sensor: what was seen, and what to do. */
export const MOTION = {
  denied: {
    seen: 'The browser refused access to the motion sensors.',
    todo: 'Allow motion sensors in the settings of this site, reload the page, and start again.',
  },
  insecure: {
    seen: 'Motion sensors work only over HTTPS, and this page came without it.',
    todo: 'Open the https:// address that "npm run phone" prints, or localhost on this machine.',
  },
  noSensor: {
    seen: 'No reading came from a motion sensor within a second.',
    todo: 'Try on a phone, or use the simulated phone to look around.',
  },
  lost: {
    seen: 'The motion sensor fell silent.',
    todo: 'Bring the page to the front, keep the screen on, and start the sensor again.',
  },
  notRunning: 'The motion sensor is not running; start it.',
}
