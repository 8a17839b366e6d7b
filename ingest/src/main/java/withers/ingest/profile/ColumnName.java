package withers.ingest.profile;

import withers.yaml.Choices;

/** The columns that a profile can name, in our words; those about people are {@link PartyName}s. */
public enum ColumnName {
  CHIP(Content.NUMBER),
  SECOND_CHIP(Content.NUMBER),
  NAME(Content.TEXT),
  SPECIES(Content.WORD),
  SEX(Content.WORD),
  BORN(Content.DAY),
  IMPLANTED(Content.DAY),
  VISIT(Content.DAY),
  SCANNED(Content.DAY),
  SCAN_RESULT(Content.WORD),
  DIED(Content.DAY),
  DECEASED(Content.WORD),
  INTAKE(Content.DAY),
  INTAKE_TYPE(Content.WORD),
  OUTCOME(Content.DAY),
  OUTCOME_TYPE(Content.WORD),
  MOVED(Content.DAY),
  MOVEMENT_TYPE(Content.WORD),
  SOLD(Content.DAY),
  RETURNED(Content.DAY),
  FIRST(Content.NUMBER),
  LAST(Content.NUMBER),
  SUPPLIED(Content.DAY),
  PREPAID(Content.WORD),
  ACCOUNT(Content.TEXT),
  REGISTERED(Content.DAY),
  UPDATED(Content.DAY),
  STATUS(Content.WORD),
  ENDED(Content.DAY),
  END_REASON(Content.WORD),
  REPORT_TYPE(Content.WORD),
  REPORTED(Content.DAY),
  REUNITED(Content.DAY);

  /** What a column's cells hold. */
  public enum Content {
    NUMBER,
    TEXT,
    DAY,
    /** A word of a list: the export's words are turned into ours. */
    WORD
  }

  private final Content content;

  ColumnName(Content content) {
    this.content = content;
  }

  public Content content() {
    return content;
  }

  /** As profiles write it: {@code second-chip}. */
  public String word() {
    return Choices.name(this);
  }
}
