// @vitest-environment happy-dom
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { goBack, parseHash, path, route, startRouter } from '../../../src/ui/common/router'

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
  beforeEach(() => {
    history.replaceState(null, '', '#/gesture/ring')
    startRouter()
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
