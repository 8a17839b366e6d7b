package withers.bench;

import picocli.CommandLine.Option;
import withers.demo.Shares;

/** What happens in the generated network, and how often. */
final class MixOptions {

  /** Whose lives the animals have. */
  enum Mix {
    /** Most is as it should be. */
    NETWORK,
    /** The scenario of the demo, in which most animals show something. */
    DEMO
  }

  private static final String OF_ROWS = "Share of rows ";

  @Option(
      names = "--mix",
      defaultValue = "network",
      description =
          "network, in which most is as it should be; or demo, whose shares are its own"
              + " (${DEFAULT-VALUE}).")
  private Mix mix;

  @Option(
      names = "--trouble",
      description = "Share of animals with which something goes wrong (${DEFAULT-VALUE}).")
  private double trouble = Shares.USUAL.trouble();

  @Option(
      names = "--late",
      description = "Share of animals whose rows come in the next month (${DEFAULT-VALUE}).")
  private double late = Shares.USUAL.late();

  @Option(
      names = "--repeated",
      description = OF_ROWS + "that stand in their file twice (${DEFAULT-VALUE}).")
  private double repeated = Shares.USUAL.repeated();

  @Option(
      names = "--corrected",
      description = OF_ROWS + "whose day is another in the next month (${DEFAULT-VALUE}).")
  private double corrected = Shares.USUAL.corrected();

  @Option(
      names = "--changed",
      description = OF_ROWS + "with another phone in the next month (${DEFAULT-VALUE}).")
  private double changed = Shares.USUAL.changed();

  @Option(names = "--people", description = "Persons for each animal (${DEFAULT-VALUE}).")
  private double people = Shares.USUAL.people();

  boolean isDemo() {
    return mix == Mix.DEMO;
  }

  Shares shares() {
    return new Shares(trouble, late, repeated, corrected, changed, people);
  }

  /** For the table and the JSON. */
  String text() {
    return isDemo()
        ? "the demo's mix"
        : "trouble %s, late %s, repeated %s, corrected %s, changed %s, people %s"
            .formatted(trouble, late, repeated, corrected, changed, people);
  }
}
