package withers.trace;

import java.util.List;

/** What to keep in mind whenever records about an animal are read out. */
public final class Cautions {

  /** In the order in which they are shown. */
  public static final List<String> ALL =
      List.of(
          "Records that disagree prove neither ownership nor wrongdoing.",
          "Release follows local law, stray-hold periods and proof of ownership.",
          "Contact people only as privacy law allows, through the organisation named.");

  /** Shown when no record speaks of the number. */
  public static final List<String> UNKNOWN =
      List.of(
          "Read the number again, digit by digit, and scan again: the whole body, slowly, with a reader"
              + " for all frequencies. The animal may carry a second chip.",
          "A number that is not found does not mean that there is no registration: ask the registries"
              + " that may hold it.");

  private Cautions() {}
}
