package withers.demo;

import java.util.List;
import java.util.stream.Collectors;

/** The stories as the table of {@code fixtures/README.md}. */
final class StoryTable {

  private StoryTable() {}

  static String markdown(List<Story> stories) {
    return stories.stream()
        .map(StoryTable::line)
        .collect(
            Collectors.joining(
                "\n",
                "| chip | animal | what happened, and why this follows | September | October | who acts |\n"
                    + "| --- | --- | --- | --- | --- | --- |\n",
                "\n"));
  }

  private static String line(Story story) {
    return "| %s | %s (%s) | %s | %s | %s | %s |"
        .formatted(
            story.chip(),
            story.animal(),
            story.species(),
            story.sentence(),
            story.found(Round.first()),
            story.found(Round.last()),
            story.who());
  }

  /** Prints the table, to be pasted into the page when the stories changed. */
  public static void main(String... arguments) {
    System.out.print(markdown(StoryTables.stories()));
  }
}
