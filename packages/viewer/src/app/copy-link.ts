import { faultReport } from '@flathead/solver';
import { headLink } from '../keeping/link.ts';
import { notify } from '../state/notice-store.ts';
import type { Workbench } from '../state/workbench.ts';

/** Copies a link that holds the head on the bench. */
export async function copyLink({ head, notices }: Workbench): Promise<void> {
  const { model } = head.getState();
  try {
    const link = headLink(model, `${location.origin}${location.pathname}`);
    await navigator.clipboard.writeText(link);
    notify(notices, {
      tone: 'info',
      title: 'Link copied',
      text: `It holds ${model.name} as it is now, in ${link.length} characters. Nothing is sent to a server: whoever has the link has the head.`,
    });
  } catch (thrown) {
    notify(notices, { tone: 'trouble', title: 'No link was copied', text: faultReport(thrown).message });
  }
}
