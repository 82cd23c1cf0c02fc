/** What the phone source needs of the browser; tests bring their own. */
export interface PhoneEnvironment {
  /** Whether the page came by HTTPS or from localhost. */
  secure: boolean
  /** Undefined where the browser has no motion events. */
  motionEvents: { requestPermission?: () => Promise<string> } | undefined
  /** Where 'devicemotion' and 'deviceorientation' arrive. */
  window: EventTarget
  document: EventTarget & { readonly visibilityState: DocumentVisibilityState }
  /** Clock of the events' time stamps, ms. */
  nowMs(): number
}

export function browserEnvironment(): PhoneEnvironment {
  return {
    secure: window.isSecureContext,
    motionEvents: (globalThis as { DeviceMotionEvent?: PhoneEnvironment['motionEvents'] })
      .DeviceMotionEvent,
    window,
    document,
    nowMs: () => performance.now(),
  }
}
