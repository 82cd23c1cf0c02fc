import { useEffect, useState } from 'preact/hooks'
import { COLLECT_HOME } from '../../shared/words/en/collect-home'
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
    <Screen title={COLLECT_HOME.ways.sharedFiles} back="#/collect">
      <p>{COLLECT_HOME.ways.noFile}</p>
      <FileButton accept=".zip,application/zip" multiple onFiles={(f) => bringFiles(collect, f)}>
        {COLLECT_HOME.bring.chooseFiles}
      </FileButton>
      <Button href="#/collect">{COLLECT_HOME.ways.back}</Button>
    </Screen>
  )
}
