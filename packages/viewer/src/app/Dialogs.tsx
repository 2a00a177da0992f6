import { lazy, Suspense } from 'react';
import { useView, useWorkbench } from '../state/use-workbench.ts';

const StartDialog = lazy(async () => ({ default: (await import('../start/StartDialog.tsx')).StartDialog }));
const KeysSheet = lazy(async () => ({ default: (await import('./KeysSheet.tsx')).KeysSheet }));
const ExchangeDialog = lazy(async () => ({
  default: (await import('../exchange/ExchangeDialog.tsx')).ExchangeDialog,
}));

/** What lies over the page, fetched when it is first wanted. */
export function Dialogs() {
  const { view } = useWorkbench();
  const dialog = useView((state) => state.dialog);
  const close = (): void => view.setState({ dialog: null });
  return (
    <Suspense>
      {dialog === 'start' && <StartDialog onClose={close} />}
      {dialog === 'keys' && <KeysSheet onClose={close} />}
      {(dialog === 'import' || dialog === 'export') && <ExchangeDialog way={dialog} onClose={close} />}
    </Suspense>
  );
}
