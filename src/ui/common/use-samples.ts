import { useEffect, useState } from 'preact/hooks'
import type { Recording } from '../../shared/model/library'
import type { SampleBlock } from '../../shared/model/sample'
import { useApp } from './app-context'

/** Samples never change, so what was read once serves every screen of the visit. */
const kept = new Map<string, SampleBlock>()
/** About 2 MB of takes; backgrounds are not kept. */
const MOST_KEPT = 400

/** Samples of these recordings, in their order; empty until all are read. */
export function useSamples(recordings: Recording[]): SampleBlock[] {
  const app = useApp()
  const key = recordings.map((recording) => recording.id).join(' ')
  const [blocks, setBlocks] = useState<{ key: string; blocks: SampleBlock[] }>(() => ({
    key,
    blocks: allKept(recordings) ?? [],
  }))
  useEffect(() => {
    let wanted = true
    const read = async () => {
      const found = await Promise.all(
        recordings.map(async (recording) => {
          const block = kept.get(recording.id) ?? (await app.library.samples(recording.id))
          if (block !== null) keep(recording, block)
          return block
        }),
      )
      if (wanted) setBlocks({ key, blocks: found.filter((block) => block !== null) })
    }
    void read()
    return () => {
      wanted = false
    }
    // The key stands for the recordings.
  }, [key, app])
  return blocks.key === key ? blocks.blocks : (allKept(recordings) ?? [])
}

function allKept(recordings: Recording[]): SampleBlock[] | null {
  const blocks: SampleBlock[] = []
  for (const recording of recordings) {
    const block = kept.get(recording.id)
    if (block === undefined) return null
    blocks.push(block)
  }
  return blocks
}

function keep(recording: Recording, block: SampleBlock): void {
  if (recording.kind === 'background') return
  kept.set(recording.id, block)
  if (kept.size <= MOST_KEPT) return
  const oldest = kept.keys().next().value
  if (oldest !== undefined) kept.delete(oldest)
}
