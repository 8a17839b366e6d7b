package withers.cli;

/**
 * How a command ended, as the number that a script sees. Released numbers never change their
 * meaning.
 */
public enum ExitCode {
  DONE(0, "Done, and nothing needs a person."),
  ATTENTION(
      1,
      "Done, but something needs a person: rows went to quarantine, a file was left for"
          + " next time, disappearances are withheld, or a number is unknown. The message says what."),
  USAGE(2, "The command line was not understood. Nothing was changed."),
  CONFIGURATION(
      3, "The workspace or its configuration has mistakes; all are listed. Nothing was changed."),
  INPUT_REFUSED(
      4,
      "An export can't be taken: unknown layout, broken file, too many bad rows. Nothing was changed."),
  BUSY(
      5,
      "Another command is writing to the workspace, or was faster. Nothing was changed; try again later."),
  STORAGE(
      6,
      "Something can't be read or written: the log or the vault is damaged, the disk is full, a permission is"
          + " missing. Nothing half done is visible."),
  NOT_SENT(
      7,
      "Mail was not taken over by the server, or nobody knows whether it was. Everything else is done. The message says whose."),
  BELOW_TARGET(
      8, "The share that was asked for is not reached. The message says by how much it is missed."),
  NOT_KNOWN(
      9,
      "Of too many it can't be told, so that the share says little. The message says of how many."),
  INTERNAL(70, "A fault in Withers itself. Nothing half done is visible.");

  private final int number;
  private final String meaning;

  ExitCode(int number, String meaning) {
    this.number = number;
    this.meaning = meaning;
  }

  public int number() {
    return number;
  }

  /** What the number tells, in sentences. */
  public String meaning() {
    return meaning;
  }
}
