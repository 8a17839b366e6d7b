package withers.ingest.profile;

import java.util.Optional;

/** Yes or no. */
public enum YesNo {
  YES,
  NO;

  /** What programs write for it, in lower case; empty for anything else. */
  public static Optional<YesNo> spelt(String word) {
    return switch (word) {
      case "y", "true", "1", "x" -> Optional.of(YES);
      case "n", "false", "0" -> Optional.of(NO);
      default -> Optional.empty();
    };
  }
}
