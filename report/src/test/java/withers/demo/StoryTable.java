package withers.demo;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.finding.FindingKind;

/** The stories as the tables of {@code fixtures/README.md} and {@code docs/findings.md}. */
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

  /** An example of each kind, the first of its stories, in the order of the kinds. */
  static String examples(List<Story> stories) {
    return Stream.of(FindingKind.values())
        .map(FindingKind::word)
        .flatMap(
            kind -> stories.stream().filter(one -> one.found(Round.last()).equals(kind)).limit(1))
        .map(StoryTable::example)
        .collect(
            Collectors.joining(
                "\n", "| animal | what happened | kind |\n| --- | --- | --- |\n", "\n"));
  }

  private static String example(Story story) {
    return "| %s (%s) | %s | `%s` |"
        .formatted(story.animal(), story.species(), story.sentence(), story.found(Round.last()));
  }

  /** Prints the tables, to be pasted into the pages when the stories changed. */
  public static void main(String... arguments) {
    System.out.println(markdown(StoryTables.stories()));
    System.out.print(examples(StoryTables.stories()));
  }
}
