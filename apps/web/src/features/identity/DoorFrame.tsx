import type { ReactNode } from 'react';
import { PageFrame } from '../../ui/frame/PageFrame.js';
import './identity.css';

/** The frame of a page that stands before the door: no pages to go to yet. */
export function DoorFrame({ children }: { readonly children: ReactNode }) {
  return (
    <PageFrame links={[]}>
      <div className="door">{children}</div>
    </PageFrame>
  );
}
