import { useEffect, useState } from 'preact/hooks'
import type { Take } from '../../shared/model/library'
import type { QualityWord } from '../../state/app'
import { useApp } from '../common'

/** What can be said of a take from its samples, as right after recording. */
export function TakeQuality({ take }: { take: Take }) {
  const { library } = useApp()
  const [words, setWords] = useState<QualityWord[]>([])
  useEffect(() => {
    let wanted = true
    void library.quality(take.id).then((found) => {
      if (wanted) setWords(found)
    })
    return () => {
      wanted = false
    }
  }, [library, take.id])
  const good = words.every((word) => word.code === 'good')
  return (
    <ul class={good ? 'take-quality' : 'take-quality take-quality-doubt'}>
      {words.map((word) => (
        <li key={word.code}>{word.text}</li>
      ))}
    </ul>
  )
}
