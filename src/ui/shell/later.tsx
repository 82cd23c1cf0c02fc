import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Button, Notice, Screen } from '../common'

type Loaded<P> = { state: 'loading' | 'failed' } | { state: 'ready'; Shown: ComponentType<P> }

/**
 * A screen whose code is fetched when it is first shown: less to load before the first screen.
 * Afterwards it is there at once; without a network it comes from what is kept offline.
 */
export function later<P extends object>(
  title: string,
  load: () => Promise<ComponentType<P>>,
): ComponentType<P> {
  let known: Loaded<P> = { state: 'loading' }
  return function Later(props: P) {
    const [loaded, setLoaded] = useState(known)
    useEffect(() => {
      if (known.state === 'ready') return
      load().then(
        (Shown) => {
          known = { state: 'ready', Shown }
          setLoaded(known)
        },
        () => setLoaded({ state: 'failed' }),
      )
    }, [])
    if (loaded.state === 'ready') return <loaded.Shown {...props} />
    if (loaded.state === 'loading') return null
    return (
      <Screen title={title}>
        <Notice tone="trouble" live>
          <p>
            This screen could not be loaded: the network is away, or a newer version took its place.
            Stored takes are untouched.
          </p>
        </Notice>
        <Button wide onClick={() => location.reload()}>
          Reload
        </Button>
      </Screen>
    )
  }
}
