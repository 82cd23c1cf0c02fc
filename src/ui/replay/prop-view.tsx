import { effect } from '@preact/signals'
import type { RefObject } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Quaternion } from '../../shared/attitude/quaternion'
import type { Target } from '../../shared/model/target'
import { tipInPhone } from '../../shared/target/board'
import { tipWords } from '../../shared/words/en/attitude-words'
import { REPLAY_VIEW } from '../../shared/words/en/replay-view'
import { Button } from '../common'
import type { PlayHead } from './play-head'
import type { PropScene, SceneInk } from './prop-scene'

export interface PropViewProps {
  head: PlayHead
  poses: Quaternion[]
  /** Colour at each sample; empty where it is not shown. */
  light: string[]
  target: Target
  /** What was decided last at the play head; '' before any. */
  answer: string
}

/** The prop in its estimated attitude at the play head, its light on, its axes and board shown. */
export function PropView(props: PropViewProps) {
  const { head, poses, target, answer } = props
  const [round, setRound] = useState(0)
  const [trouble, setTrouble] = useState<string | null>(null)
  const pose = poses[head.sample]
  const where = pose === undefined ? '' : tipWords(pose, tipInPhone(target))
  return (
    <figure class="prop-view">
      {trouble === null ? (
        <Drawn key={round} {...props} onTrouble={setTrouble} />
      ) : (
        <div class="prop-view-trouble">
          <p>{trouble}</p>
          <Button
            onClick={() => {
              setTrouble(null)
              setRound(round + 1)
            }}
          >
            {REPLAY_VIEW.prop.tryAgain}
          </Button>
        </div>
      )}
      <figcaption>
        <span>{where}</span>
        <b>{answer}</b>
      </figcaption>
    </figure>
  )
}

interface DrawnProps extends PropViewProps {
  onTrouble: (sentence: string) => void
}

function Drawn({ head, poses, light, target, onTrouble }: DrawnProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const letters = useRef<HTMLDivElement>(null)
  const scene = useScene(canvas, target, onTrouble)
  useEffect(() => {
    const element = canvas.current
    if (scene === null || element === null) return
    // The scene gives the canvas a size in pixels: what was laid out is the box around it.
    const box = element.parentElement ?? element
    const draw = () => {
      const pose = poses[head.sample]
      if (pose === undefined) return
      const places = scene.draw(pose, light[head.sample] ?? null, inkOf(element))
      places.forEach(([x, y], axis) => {
        const letter = letters.current?.children[axis]
        if (letter instanceof HTMLElement) letter.style.translate = `${x}px ${y}px`
      })
    }
    const observer = new ResizeObserver(() => {
      scene.resize(box.clientWidth, box.clientHeight)
      draw()
    })
    observer.observe(box)
    const stop = effect(draw)
    return () => {
      observer.disconnect()
      stop()
    }
  }, [scene, poses, light, head])
  return (
    <div class="prop-view-canvas">
      <canvas ref={canvas} role="img" aria-label={REPLAY_VIEW.prop.label} />
      <div ref={letters} aria-hidden="true">
        <i>x</i>
        <i>y</i>
        <i>z</i>
      </div>
    </div>
  )
}

/** The scene on a canvas, its code fetched only here; null until it is there, or at trouble. */
function useScene(
  canvas: RefObject<HTMLCanvasElement | null>,
  target: Target,
  onTrouble: (sentence: string) => void,
): PropScene | null {
  const [scene, setScene] = useState<PropScene | null>(null)
  useEffect(() => {
    const element = canvas.current
    if (element === null) return
    let made: PropScene | null = null
    let wanted = true
    const onLost = (event: Event) => {
      event.preventDefault()
      if (wanted) onTrouble(REPLAY_VIEW.prop.lost)
    }
    element.addEventListener('webglcontextlost', onLost)
    import('./prop-scene').then(
      ({ PropScene }) => {
        if (!wanted) return
        made = PropScene.on(element, target)
        if (made === null) onTrouble(REPLAY_VIEW.prop.noWebgl)
        else setScene(made)
      },
      () => {
        if (wanted) onTrouble(REPLAY_VIEW.prop.notLoaded)
      },
    )
    return () => {
      wanted = false
      element.removeEventListener('webglcontextlost', onLost)
      made?.dispose()
    }
  }, [target])
  return scene
}

/** Colours come from the theme, read anew each time: it may change while it plays. */
function inkOf(element: Element): SceneInk {
  const style = getComputedStyle(element)
  return {
    text: style.getPropertyValue('--text'),
    quiet: style.getPropertyValue('--text-quiet'),
    line: style.getPropertyValue('--line-strong'),
    ground: style.getPropertyValue('--ground'),
  }
}
