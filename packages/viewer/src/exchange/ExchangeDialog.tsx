import { ExportDialog } from './ExportDialog.tsx';
import { ImportDialog } from './ImportDialog.tsx';

/** Files of other programs, in and out: fetched together, as both need the readers and writers. */
export function ExchangeDialog({ way, onClose }: { way: 'import' | 'export'; onClose: () => void }) {
  return way === 'import' ? <ImportDialog onClose={onClose} /> : <ExportDialog onClose={onClose} />;
}
