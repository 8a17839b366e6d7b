package withers.workspace;

/** What an import does with records that are as they were in their source's last full export. */
public enum UnchangedRecords {
  /** They are recognised by their bytes and not read again. */
  RECOGNISED,
  /** They are read like all others; nothing is kept for recognising them. */
  READ
}
