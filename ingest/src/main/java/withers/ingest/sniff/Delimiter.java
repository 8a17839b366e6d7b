package withers.ingest.sniff;

/** What stands between cells. */
public enum Delimiter {
  COMMA(','),
  SEMICOLON(';'),
  TAB('\t'),
  BAR('|');

  private final char sign;

  Delimiter(char sign) {
    this.sign = sign;
  }

  public char sign() {
    return sign;
  }
}
