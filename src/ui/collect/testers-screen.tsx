import { countLibrary } from '../../shared/present/library-counts'
import { plural } from '../../shared/words/en/numbers'
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
      title="Testers"
      back="#/collect"
      foot={
        counts.takes > 1 && !isFresh && job.state !== 'running' ? (
          <Button tone="amber" big wide onClick={() => void collect.compare()}>
            {compared === null ? 'Compare the takes' : 'Compare again'}
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
      {compared !== null && !isFresh && (
        <p class="quiet">Takes have changed since they were compared.</p>
      )}
      {counts.takes === 0 ? (
        <p>No takes yet: {plural('gesture', counts.gestures.length)}, no testers.</p>
      ) : (
        <TesterTable compared={compared} />
      )}
      {compared !== null && (
        <>
          <FarTakes collect={collect} compared={compared} />
          <Section title="By hand">
            <p class="quiet small">
              Distance to the others of the gesture: 1 is usual; the median of the takes that were
              compared. Far below or above 1 means a group moves unlike the rest, or its phones read
              otherwise.
            </p>
            <GroupTable rows={compared.hands} what="Hand" />
          </Section>
          <Section title="By rate of the phone">
            <GroupTable rows={compared.rates} what="Rate" />
          </Section>
          <Section title="By phone">
            <GroupTable rows={compared.devices} what="Phone" />
          </Section>
        </>
      )}
      {counts.testers.length > 0 && <Withdraw collect={collect} testers={counts.testers} />}
    </Screen>
  )
}
