/** The small menu that every plot has: zoom, and copying as picture or data. */

import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { plotText } from '../strings/plots.ts';

/** What a plot can do. */
export interface PlotActs {
  readonly zoomed: boolean;
  zoomIn(): void;
  zoomOut(): void;
  whole(): void;
  copyPicture(): void;
  copyData(): void;
}

/** The button and its menu. */
export function PlotMenu({ name, acts }: { readonly name: string; readonly acts: PlotActs }) {
  const items = [
    ['zoomIn', plotText.zoomIn],
    ['zoomOut', plotText.zoomOut],
    ['whole', plotText.whole],
    ['copyPicture', plotText.picture],
    ['copyData', plotText.data],
  ] as const;
  return (
    <MenuTrigger>
      <Button className="plot-menu" aria-label={plotText.menu(name)}>
        <span title={plotText.help} aria-hidden="true">
          ⋯
        </span>
      </Button>
      <Popover className="popover" placement="bottom end">
        <Menu
          className="menu"
          aria-label={plotText.menu(name)}
          disabledKeys={acts.zoomed ? [] : ['zoomOut', 'whole']}
          onAction={(key) => acts[key as (typeof items)[number][0]]()}
        >
          {items.map(([id, label]) => (
            <MenuItem key={id} id={id} className="menu-item">
              {label}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
