package withers.report.publish;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.contact.ContactVault;
import withers.finding.RunResult;
import withers.id.OrganisationId;
import withers.log.ImportMarker;
import withers.mailing.Mailings;
import withers.organisation.Organisation;
import withers.report.csv.ListCsv;
import withers.report.html.Pages;
import withers.report.json.OverviewJson;
import withers.report.list.FollowUpList;
import withers.report.list.FollowUpLists;
import withers.report.mail.Mails;
import withers.report.mail.ReadyMail;
import withers.report.overview.Overview;
import withers.report.overview.Overviews;
import withers.report.text.Texts;
import withers.report.xlsx.ListWorkbook;
import withers.workspace.Workspace;

/**
 * Makes all that people are given after a run: {@code lists/RUN/ORGANISATION/list.html}, {@code
 * .xlsx} and {@code .csv}, {@code lists/RUN/overview.html} and {@code .json}, and {@code
 * outbox/RUN/ORGANISATION.eml}. Publishing a run again replaces what it made before. The caller
 * holds the workspace's lock.
 */
public final class Publisher {
  private final Workspace workspace;
  private final ContactVault vault;
  private final Texts texts;
  private final Mailings mailings;

  /** With what was sent so far: a list tells what changed since its reader's last one. */
  public Publisher(Workspace workspace, ContactVault vault, Mailings mailings) {
    this.mailings = mailings;
    this.workspace = workspace;
    this.vault = vault;
    this.texts = Texts.in(workspace.settings().language());
  }

  /**
   * Publishes a run.
   *
   * @param markers the committed markers of the log that the run read
   * @throws UncheckedIOException when something can't be written; nothing half made is left
   */
  public Published publish(RunResult run, List<ImportMarker> markers) {
    List<FollowUpList> lists = FollowUpLists.of(run, workspace.directory(), vault, texts, mailings);
    Overview overview = Overviews.of(run, workspace.settings().network(), markers);
    try {
      Path folder = writeLists(lists, overview);
      Optional<Mails> mails = mails(lists);
      Path outbox = writeMails(run, mails.map(Mails::ready).orElse(Collections.emptySortedMap()));
      return new Published(overview, lists, folder, outbox, mails);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Path writeLists(List<FollowUpList> lists, Overview overview) throws IOException {
    Path place = workspace.paths().lists().resolve(overview.run());
    Pages pages = new Pages(texts);
    try (FreshFolder folder = FreshFolder.in(place)) {
      for (FollowUpList list : lists) {
        String reader = list.organisation().id().value();
        folder.write(reader, "list.html", utf8(pages.list(list)));
        folder.write(reader, "list.xlsx", new ListWorkbook(texts).of(list));
        folder.write(reader, "list.csv", new ListCsv(texts).of(list));
      }
      folder.write("overview.html", utf8(pages.overview(overview, workspace.directory())));
      folder.write("overview.json", utf8(OverviewJson.of(overview)));
      folder.putInPlace();
    }
    return place;
  }

  private Optional<Mails> mails(List<FollowUpList> lists) {
    Organisation sender = workspace.coordinator();
    return Mails.canMail(sender) ? Optional.of(mails(lists, sender)) : Optional.empty();
  }

  private Mails mails(List<FollowUpList> lists, Organisation sender) {
    ZonedDateTime now = ZonedDateTime.now(workspace.clock());
    return Mails.of(
        lists, sender, workspace.settings().network(), now, texts, workspace.settings().mail());
  }

  private Path writeMails(RunResult run, Map<OrganisationId, ReadyMail> mails) throws IOException {
    Path place = workspace.paths().outbox().resolve(run.id());
    try (FreshFolder folder = FreshFolder.in(place)) {
      for (Map.Entry<OrganisationId, ReadyMail> mail : mails.entrySet()) {
        folder.write(mail.getKey() + ".eml", mail.getValue().content());
      }
      folder.putInPlace();
    }
    return place;
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
