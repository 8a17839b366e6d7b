package withers.report.publish;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import withers.contact.ContactVault;
import withers.finding.RunResult;
import withers.log.ImportMarker;
import withers.mailing.Mailings;
import withers.organisation.Organisation;
import withers.point.Point;
import withers.point.Points;
import withers.report.chart.Chart;
import withers.report.chart.Drawing;
import withers.report.csv.ListCsv;
import withers.report.html.Pages;
import withers.report.json.OverviewJson;
import withers.report.list.FollowUpList;
import withers.report.list.FollowUpLists;
import withers.report.list.Listed;
import withers.report.mail.Mailbag;
import withers.report.mail.Mails;
import withers.report.mail.ReadyMail;
import withers.report.overview.Background;
import withers.report.overview.Overview;
import withers.report.overview.Overviews;
import withers.report.overview.RunFigures;
import withers.report.overview.Trends;
import withers.report.overview.Unnumbered;
import withers.report.text.Texts;
import withers.report.xlsx.ListWorkbook;
import withers.workspace.Workspace;

/**
 * Makes all that people are given after a run: {@code lists/RUN/ORGANISATION/list.html}, {@code
 * .xlsx} and {@code .csv}, {@code lists/RUN/overview.html} and {@code .json} with pictures of its
 * charts, and {@code outbox/RUN/ORGANISATION.eml}. Publishing a run again replaces what it made
 * before. The caller holds the workspace's lock.
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
   * @param unnumbered the records without a number
   * @param earlier figures of earlier runs, the oldest first
   * @throws UncheckedIOException when something can't be written; nothing half made is left
   */
  public Published publish(
      RunResult run, List<ImportMarker> markers, Unnumbered unnumbered, List<RunFigures> earlier) {
    Background background =
        new Background(
            workspace.settings().network(), workspace.directory(), markers, unnumbered, earlier);
    Overview overview = Overviews.of(run, background);
    Points points = workspace.points();
    Path lists = workspace.paths().lists().resolve(run.id());
    Path outbox = workspace.paths().outbox().resolve(run.id());
    try (FreshFolder listsFolder = FreshFolder.in(lists, points);
        FreshFolder outboxFolder = FreshFolder.in(outbox, points)) {
      Optional<Mailbag> bag = bag(outboxFolder, outbox);
      Drawing drawing = new Drawing(texts.locale());
      bag.ifPresent(mails -> mails.add(overview, workspace.directory(), drawing));
      List<Listed> listed = writeLists(run, listsFolder, bag);
      listsFolder.write(
          "overview.html", utf8(new Pages(texts).overview(overview, workspace.directory())));
      listsFolder.write("overview.json", utf8(OverviewJson.of(overview)));
      writePictures(overview, drawing, listsFolder);
      points.reached(Point.REPORT_WRITTEN);
      listsFolder.putInPlace();
      points.reached(Point.REPORT_LISTS_IN_PLACE);
      outboxFolder.putInPlace();
      points.reached(Point.REPORT_DONE);
      return new Published(
          workspace.coordinator(), overview, listed, lists, outbox, bag.map(Mailbag::mails));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * One by one, each written while the next is made, its page and table beside its workbook, and
   * its mail after that: no more than three lists are held at a time, and one mail.
   */
  private List<Listed> writeLists(RunResult run, FreshFolder folder, Optional<Mailbag> bag)
      throws IOException {
    try (OneBehind<Listed> mails = new OneBehind<>();
        OneBehind<Listed> pages = new OneBehind<>();
        OneBehind<Listed> sheets = new OneBehind<>()) {
      for (FollowUpList list :
          FollowUpLists.oneByOne(run, workspace.directory(), vault, texts, mailings)) {
        pages.handOver(() -> writeTexts(list, folder));
        sheets.handOver(
            () -> {
              byte[] sheet = writeSheet(list, folder);
              mails.handOver(() -> mail(list, sheet, bag));
              return list.listed();
            });
      }
      pages.results();
      sheets.results();
      return mails.results();
    }
  }

  private Listed writeTexts(FollowUpList list, FreshFolder folder) throws IOException {
    String reader = list.organisation().id().value();
    folder.write(reader, "list.html", utf8(new Pages(texts).list(list)));
    folder.write(reader, "list.csv", out -> new ListCsv(texts).write(list, out));
    return list.listed();
  }

  private byte[] writeSheet(FollowUpList list, FreshFolder folder) throws IOException {
    byte[] sheet = new ListWorkbook(texts).of(list);
    folder.write(list.organisation().id().value(), "list.xlsx", sheet);
    return sheet;
  }

  private Listed mail(FollowUpList list, byte[] sheet, Optional<Mailbag> bag) {
    bag.ifPresent(mails -> mails.add(list, () -> sheet));
    workspace.points().reached(Point.REPORT_FIRST_LIST);
    return list.listed();
  }

  /** The charts once more: mails and documents take pictures, and no part of a page. */
  private void writePictures(Overview overview, Drawing drawing, FreshFolder folder)
      throws IOException {
    for (Chart chart : Trends.of(overview, texts)) {
      Optional<byte[]> picture = drawing.png(chart);
      if (picture.isPresent()) {
        folder.write(chart.id() + ".png", picture.get());
      }
    }
  }

  /** None when the coordinator has no address to send mails from. */
  private Optional<Mailbag> bag(FreshFolder folder, Path place) {
    Organisation sender = workspace.coordinator();
    return Mails.canMail(sender)
        ? Optional.of(
            new Mailbag(
                sender,
                workspace.settings().network(),
                ZonedDateTime.now(workspace.clock()),
                texts,
                workspace.settings().mail(),
                (to, mail) -> kept(folder, place, to + ".eml", mail)))
        : Optional.empty();
  }

  private static ReadyMail kept(FreshFolder folder, Path place, String name, ReadyMail mail) {
    try {
      folder.write(name, mail.content());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return mail.keptIn(place.resolve(name));
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
