/** The kinds of tool that cutting numbers are known for. */
export const TOOL_KINDS = ['drill', 'annular cutter', 'boring head', 'end mill'] as const;

/** A kind of tool. */
export type ToolKind = (typeof TOOL_KINDS)[number];

/** What the edges of tools are made of. */
export const TOOL_MATERIALS = ['HSS', 'carbide'] as const;

/** What the edges of a tool are made of: high-speed steel or cemented carbide. */
export type ToolMaterial = (typeof TOOL_MATERIALS)[number];
