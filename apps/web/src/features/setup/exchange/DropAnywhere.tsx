import { type ReactNode, useEffect, useState } from 'react';
import { FormattedMessage } from 'react-intl';

interface Props {
  readonly onFiles: (files: readonly File[]) => void;
  readonly children: ReactNode;
}

const hasFiles = (event: DragEvent): boolean => [...(event.dataTransfer?.types ?? [])].includes('Files');

/** Files dropped anywhere on this page are taken; one that misses a box does not open in the browser instead. */
export function DropAnywhere({ onFiles, children }: Props) {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const over = (event: DragEvent): void => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(false);
      onFiles([...(event.dataTransfer?.files ?? [])]);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, [onFiles]);
  return (
    <div className={isOver ? 'dropping' : undefined}>
      {children}
      {isOver && (
        <p className="drop-words">
          <span>
            <FormattedMessage id="setup.drop" />
          </span>
        </p>
      )}
    </div>
  );
}
