/** The revisions in the window's head: those around the shown one as buttons, all of them in a list when there are many. */

import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import type { Revision } from '../../core/index.ts';
import { dropDrafts } from '../store/drafts.ts';
import { showRevision, useProject } from '../store/project.ts';
import { text } from '../strings.ts';

const words = text.revisions;

/** So many stand in the strip; own choice: what fits beside the other commands in a window of 1280 px. */
export const mostInStrip = 5;

/** The revisions that stand in the strip: all, or as many as fit around the shown one. */
export function stripOf<T extends { readonly id: string }>(revisions: readonly T[], shown: string): readonly T[] {
  if (revisions.length <= mostInStrip) return revisions;
  const place = Math.max(
    0,
    revisions.findIndex(({ id }) => id === shown),
  );
  const first = Math.min(Math.max(0, place - Math.floor(mostInStrip / 2)), revisions.length - mostInStrip);
  return revisions.slice(first, first + mostInStrip);
}

/** Shows another revision; what was typed and refused in its fields goes. */
export function openRevision(id: string): void {
  dropDrafts(['revisions']);
  showRevision(id);
}

const spoken = ({ id, name, locked }: Revision): string => `${id}: ${name}${locked ? `, ${words.locked}` : ''}`;

function All({ revisions, shown }: { readonly revisions: readonly Revision[]; readonly shown: string }) {
  return (
    <MenuTrigger>
      <Button className="revision all-revisions" aria-label={words.allLabel(revisions.length)}>
        {words.all(revisions.length)} <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="popover">
        <Menu
          className="menu revision-menu"
          aria-label={words.allLabel(revisions.length)}
          selectionMode="single"
          selectedKeys={[shown]}
          onAction={(key) => openRevision(String(key))}
        >
          {revisions.map((revision) => (
            <MenuItem key={revision.id} id={revision.id} className="menu-item" textValue={spoken(revision)}>
              {revision.id === shown ? '● ' : ''}
              <b>{revision.id}</b> {revision.name}
              {revision.locked && <span className="lock"> {words.locked}</span>}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

/** The strip. */
export function RevisionStrip() {
  const { revisions, activeRevision: shown } = useProject();
  return (
    <span className="revision-strip">
      {stripOf(revisions, shown).map((revision) => {
        const active = revision.id === shown;
        return (
          <Button
            key={revision.id}
            className={active ? 'revision active' : 'revision'}
            aria-pressed={active}
            aria-label={spoken(revision)}
            onPress={() => openRevision(revision.id)}
          >
            <span title={`${revision.id}: ${revision.name}`}>
              <b>{revision.id}</b>
              {active && <span className="revision-name"> {revision.name}</span>}
              {active && revision.locked && <span className="lock"> {words.locked}</span>}
            </span>
          </Button>
        );
      })}
      {revisions.length > mostInStrip && <All revisions={revisions} shown={shown} />}
    </span>
  );
}
