package withers.workspace;

import java.util.Map;
import java.util.stream.Collectors;
import withers.yaml.Choices;

/**
 * What a new workspace's answers are as YAML, by the words that stand for them in the templates.
 */
record FirstTexts(NewWorkspace answers) {
  private static final String NO_JOBS =
      """
      # schedule:
      #   nightly: {cron: 30 2 * * *, actions: [ingest]}
      #   monthly: {cron: 0 4 1 * *, actions: [ingest, reconcile, report]}
      """;
  private static final String NIGHTLY =
      """
      schedule:
        nightly: {cron: 30 2 * * *, actions: [ingest, reconcile, report]}
      """;
  private static final String MONTHLY =
      """
      schedule:
        nightly: {cron: 30 2 * * *, actions: [ingest]}
        monthly: {cron: 0 4 1 * *, actions: [ingest, reconcile, report]}
      """;

  Map<String, String> byWord() {
    return Map.of(
        "network", quoted(answers.network()),
        "zone", quoted(answers.zone().getId()),
        "phone-region", quoted(answers.phoneRegion()),
        "language", quoted(answers.language()),
        "test-numbers", Choices.name(answers.testNumbers()),
        "coordinator-mail",
            answers.mail().map(FirstTexts::mail).orElse("    # mail: overview@example.org"),
        "members", answers.members().stream().map(FirstTexts::member).collect(Collectors.joining()),
        "schedule", schedule().strip());
  }

  private static String mail(String address) {
    return "    mail: " + quoted(address);
  }

  private static String member(Member member) {
    return "\n  - id: %s\n    name: %s\n    kind: %s\n%s\n"
        .formatted(
            quoted(member.id().value()),
            quoted(member.name()),
            Choices.name(member.kind()),
            member
                .mail()
                .map(FirstTexts::mail)
                .orElse("    # mail: the address that its list goes to"));
  }

  private String schedule() {
    return switch (answers.schedule()) {
      case NONE -> NO_JOBS;
      case NIGHTLY -> NIGHTLY;
      case MONTHLY -> MONTHLY;
    };
  }

  /** Numbers and words that YAML might take for something else stand in quotes. */
  private static String quoted(String word) {
    boolean plain = word.matches("[A-Za-z][A-Za-z0-9/_-]*");
    return plain ? word : "'" + word.replaceAll("\\p{Cntrl}+", " ").replace("'", "''") + "'";
  }
}
