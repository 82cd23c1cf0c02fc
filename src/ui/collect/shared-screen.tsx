import { useEffect, useState } from 'preact/hooks'
import type { CollectState } from '../../state/collect'
import { Button, FileButton, replace, Screen } from '../common'
import { BRING, bringFiles } from './bring-files'

/** Where files land that another app shared to this one. */
export function SharedScreen({ collect }: { collect: CollectState }) {
  const [empty, setEmpty] = useState(false)
  useEffect(() => {
    void collect.takeShared().then((files) => {
      setEmpty(files.length === 0)
      if (files.length === 0) return
      void collect.bring(files)
      replace(BRING)
    })
  }, [collect])
  if (!empty) return null
  return (
    <Screen title="Shared files" back="#/collect">
      <p>No file came with it. Choose it here instead.</p>
      <FileButton accept=".zip,application/zip" multiple onFiles={(f) => bringFiles(collect, f)}>
        Choose session files
      </FileButton>
      <Button href="#/collect">Back to collecting</Button>
    </Screen>
  )
}
