import { countLibrary } from '../../shared/present/library-counts'
import { COLLECT_TESTERS } from '../../shared/words/en/collect-testers'
import type { CollectState } from '../../state/collect'
import { Button, Notice, Progress, Screen, Section, useApp } from '../common'
import { FarTakes } from './far-takes'
import { GroupTable } from './group-table'
import { TesterTable } from './tester-table'
import { Withdraw } from './withdraw'

/** Testers side by side: what is there, what lies far from the rest, which phones recorded it. */
export function TestersScreen({ collect }: { collect: CollectState }) {
  const app = useApp()
  const library = app.library.current.value
  const counts = countLibrary(library?.gestures ?? [], app.library.recordings.value)
  const job = collect.compared.value
  const compared = job.state === 'done' ? job.value : null
  const isFresh = job.state === 'done' && !job.stale
  return (
    <Screen
      title={COLLECT_TESTERS.title}
      back="#/collect"
      foot={
        counts.takes > 1 && !isFresh && job.state !== 'running' ? (
          <Button tone="amber" big wide onClick={() => void collect.compare()}>
            {compared === null ? COLLECT_TESTERS.compare : COLLECT_TESTERS.compareAgain}
          </Button>
        ) : undefined
      }
    >
      {job.state === 'running' && <Progress progress={job.progress} cancel={job.cancel} />}
      {job.state === 'failed' && (
        <Notice tone="trouble" live>
          {job.message}
        </Notice>
      )}
      {compared !== null && !isFresh && <p class="quiet">{COLLECT_TESTERS.changed}</p>}
      {counts.takes === 0 ? (
        <p>{COLLECT_TESTERS.noTakes(counts.gestures.length)}</p>
      ) : (
        <TesterTable compared={compared} />
      )}
      {compared !== null && (
        <>
          <FarTakes collect={collect} compared={compared} />
          <Section title={COLLECT_TESTERS.groups.byHand}>
            <p class="quiet small">{COLLECT_TESTERS.groups.hint}</p>
            <GroupTable rows={compared.hands} what={COLLECT_TESTERS.groups.hand} />
          </Section>
          <Section title={COLLECT_TESTERS.groups.byRate}>
            <GroupTable rows={compared.rates} what={COLLECT_TESTERS.groups.rate} />
          </Section>
          <Section title={COLLECT_TESTERS.groups.byPhone}>
            <GroupTable rows={compared.devices} what={COLLECT_TESTERS.groups.phone} />
          </Section>
        </>
      )}
      {counts.testers.length > 0 && <Withdraw collect={collect} testers={counts.testers} />}
    </Screen>
  )
}
