package withers.report.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import withers.id.OrganisationId;
import withers.report.json.Json;
import withers.report.list.Listed;
import withers.report.publish.Published;
import withers.workspace.WorkspacePaths;

/** What was published, as JSON for scripts: files and counts, no person. */
final class PublishedJson {
  private PublishedJson() {}

  private record Root(
      String run,
      LocalDate asOf,
      long followUps,
      String lists,
      String overview,
      String outbox,
      List<One> organisations) {}

  private record One(
      String organisation,
      int followUps,
      int opened,
      int stillOpen,
      int settled,
      int settledByPeople,
      int waiting,
      boolean mail) {}

  /**
   * One JSON object.
   *
   * @param paths those of the workspace: files are named relative to it
   */
  static String of(Published published, WorkspacePaths paths) {
    Path overview = published.folder().resolve("overview.json");
    return Json.of(
        new Root(
            published.overview().run(),
            published.overview().asOf(),
            published.overview().followUps(),
            paths.shown(published.folder()),
            paths.shown(overview),
            paths.shown(published.outbox()),
            organisations(published)));
  }

  private static List<One> organisations(Published published) {
    Set<OrganisationId> mailed = published.mailed();
    return published.lists().stream()
        .map(list -> one(list, mailed.contains(list.organisation().id())))
        .toList();
  }

  private static One one(Listed list, boolean mail) {
    return new One(
        list.organisation().id().value(),
        list.size(),
        list.fresh(),
        list.stillOpen(),
        list.settled(),
        list.settledByPeople(),
        list.backlogWaiting(),
        mail);
  }
}
