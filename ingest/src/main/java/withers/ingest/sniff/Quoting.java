package withers.ingest.sniff;

import java.util.Optional;

/** What stands around cells that hold delimiters, line ends or quotes. */
public enum Quoting {
  /** The quotation mark (RFC 4180). */
  DOUBLE('"'),
  /** The apostrophe. */
  SINGLE('\''),
  /** Nothing: every quote is part of its cell. */
  NONE('\0');

  private final char sign;

  Quoting(char sign) {
    this.sign = sign;
  }

  /** The quote; empty when there is none. */
  public Optional<Character> sign() {
    return this == NONE ? Optional.empty() : Optional.of(sign);
  }

  boolean is(char c) {
    return this != NONE && c == sign;
  }
}
