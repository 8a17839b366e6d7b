package withers.report.cli;

import java.nio.file.Path;
import java.util.List;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.organisation.Organisation;
import withers.report.list.Listed;
import withers.report.mail.Mails;
import withers.report.publish.Published;
import withers.workspace.Workspace;

/** Tells what was published: files and counts to standard output, what is amiss to the other. */
record PublishedText(Console console, Workspace workspace) {

  /** Tells it all, and whether something needs a person. */
  ExitCode tell(Published published) {
    lines(published);
    return warn(published);
  }

  /** Says what is amiss, and whether anything is. */
  ExitCode warn(Published published) {
    return warnings(published) ? ExitCode.ATTENTION : ExitCode.DONE;
  }

  private void lines(Published published) {
    console.print(
        "Run %s, as of %s: %,d %s"
            .formatted(
                published.overview().run(),
                published.overview().asOf(),
                published.overview().followUps(),
                published.overview().followUps() == 1 ? "follow-up" : "follow-ups"));
    published.lists().forEach(list -> console.print("  " + line(list, published.folder())));
    console.print("Overview: " + shown(published.folder().resolve("overview.html")));
    console.print(
        "Mail: %,d ready in %s".formatted(published.mailed().size(), shown(published.outbox())));
  }

  private String line(Listed list, Path folder) {
    int waiting = list.backlogWaiting();
    return "%s: %,d (%,d new, %,d still open), %s%,d settled: %s"
        .formatted(
            list.organisation().name(),
            list.size(),
            list.fresh(),
            list.stillOpen(),
            waiting == 0 ? "" : "%,d more of the backlog wait, ".formatted(waiting),
            list.settled(),
            shown(folder.resolve(list.organisation().id().value()).resolve("list.html")));
  }

  private String shown(Path path) {
    return workspace.paths().shown(path);
  }

  private boolean warnings(Published published) {
    if (published.mails().isEmpty()) {
      console.say(
          "Expected a mail address of the coordinator, %s, to write from, but found none: no mail was made. Give it a \"mail\" in organisations.yaml."
              .formatted(workspace.settings().coordinator()));
      return true;
    }
    List<Organisation> unaddressed = published.mails().map(Mails::unaddressed).orElse(List.of());
    unaddressed.forEach(this::warn);
    return !unaddressed.isEmpty();
  }

  private void warn(Organisation organisation) {
    console.say(
        "No mail for %s: it has no address that mail can be sent to. Give it a \"mail\" in organisations.yaml, or bring the list some other way."
            .formatted(organisation.id()));
  }
}
