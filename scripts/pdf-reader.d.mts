/** Whether pdftotext is on this machine. */
export function hasPdfReader(): boolean;
