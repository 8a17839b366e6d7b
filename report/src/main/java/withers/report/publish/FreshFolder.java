package withers.report.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import withers.point.Point;
import withers.point.Points;
import withers.workspace.FolderTree;
import withers.workspace.OwnerOnly;

/**
 * A folder that is filled out of sight and put in place whole. What stood there before is gone when
 * the new one stands; leftovers of a killed attempt are cleared away by the next one. One writer of
 * each file; files may be written at the same time.
 */
final class FreshFolder implements AutoCloseable {
  private final Path place;
  private final Path fresh;
  private final Path former;
  private final Points points;

  private FreshFolder(Path place, Points points) {
    this.points = points;
    this.place = place;
    this.fresh = place.resolveSibling("." + place.getFileName() + ".new");
    this.former = place.resolveSibling("." + place.getFileName() + ".old");
  }

  /** Starts a folder that is to stand in this place; nothing is to be seen there yet. */
  static FreshFolder in(Path place, Points points) throws IOException {
    FreshFolder folder = new FreshFolder(place, points);
    FolderTree.delete(folder.fresh);
    FolderTree.delete(folder.former);
    OwnerOnly.folder(folder.fresh);
    return folder;
  }

  /** Writes a file. */
  void write(String name, byte[] content) throws IOException {
    OwnerOnly.replace(fresh.resolve(name), content);
  }

  /** Writes a file into a folder of this one. */
  void write(String inner, String name, byte[] content) throws IOException {
    OwnerOnly.replace(OwnerOnly.folder(fresh.resolve(inner)).resolve(name), content);
  }

  /** Writes a file into a folder of this one, as it comes. */
  void write(String inner, String name, OwnerOnly.Content content) throws IOException {
    OwnerOnly.replace(OwnerOnly.folder(fresh.resolve(inner)).resolve(name), content);
  }

  /** Puts the folder in its place. */
  void putInPlace() throws IOException {
    if (Files.exists(place)) {
      Files.move(place, former, StandardCopyOption.ATOMIC_MOVE);
      points.reached(Point.REPORT_FORMER_ASIDE);
    }
    Files.move(fresh, place, StandardCopyOption.ATOMIC_MOVE);
    FolderTree.delete(former);
  }

  /** Clears away what was not put in place. */
  @Override
  public void close() throws IOException {
    FolderTree.delete(fresh);
  }
}
