// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import {
  goBack,
  holdHere,
  parseHash,
  path,
  route,
  startRouter,
} from '../../../src/ui/common/router'

describe('addresses', () => {
  test('nothing leads to the gestures', () => {
    expect(parseHash('')).toEqual(['moves'])
    expect(parseHash('#/')).toEqual(['moves'])
  })

  test('an id with any characters survives the address', () => {
    const id = 'a/b ?#%ä'
    expect(parseHash(route('gesture', id))).toEqual(['gesture', id])
  })

  test('a broken escape is taken as it stands instead of failing', () => {
    expect(parseHash('#/gesture/%E0%A4%A')).toEqual(['gesture', '%E0%A4%A'])
  })
})

describe('back', () => {
  let stop: () => void

  beforeEach(() => {
    history.replaceState(null, '', '#/gesture/ring')
    stop = startRouter()
  })
  afterEach(() => {
    stop()
    vi.restoreAllMocks()
  })

  test('of a screen that was opened directly goes to its parent and not out of the app', () => {
    const back = vi.spyOn(history, 'back')
    goBack('#/moves')
    expect(path.value).toEqual(['moves'])
    expect(back).not.toHaveBeenCalled()
  })

  test('of a screen that was reached from another one goes there', async () => {
    const back = vi.spyOn(history, 'back').mockImplementation(() => undefined)
    // As a browser does for a link to another fragment: a new entry without a state.
    history.pushState(null, '', '#/record/ring')
    window.dispatchEvent(new Event('hashchange'))
    expect(path.value).toEqual(['record', 'ring'])
    goBack('#/moves')
    expect(back).toHaveBeenCalledOnce()
  })
})

describe('a screen that holds its address', () => {
  /** As a browser does when the history moves. */
  const swipeBackTo = (hash: string) => {
    history.replaceState({ depth: 0 }, '', hash)
    window.dispatchEvent(new PopStateEvent('popstate'))
    window.dispatchEvent(new Event('hashchange'))
  }
  let stop: () => void

  beforeEach(() => {
    history.replaceState(null, '', '#/stage')
    stop = startRouter()
  })
  afterEach(() => {
    stop()
    vi.restoreAllMocks()
  })

  test('stands after a swipe back, is told of it, and lets go when asked to', () => {
    const away = vi.fn()
    const letGo = holdHere(away)
    swipeBackTo('#/try')
    expect(location.hash).toBe('#/stage')
    expect(path.value).toEqual(['stage'])
    expect(away).toHaveBeenCalledOnce()

    letGo()
    expect(path.value).toEqual(['stage'])
    swipeBackTo('#/try')
    expect(path.value).toEqual(['try'])
    expect(away).toHaveBeenCalledOnce()
  })

  test('takes its own entry away when it lets go, so that one step back leaves it', () => {
    const back = vi.spyOn(history, 'back').mockImplementation(() => undefined)
    const letGo = holdHere(() => undefined)
    swipeBackTo('#/stage')
    letGo()
    letGo()
    expect(back).toHaveBeenCalledOnce()
  })
})
