/** The forms that a sheet comes in. */
export const SHEET_FORMATS = ['text', 'csv', 'html'] as const;

/** A form that a sheet comes in. */
export type SheetFormat = (typeof SHEET_FORMATS)[number];
