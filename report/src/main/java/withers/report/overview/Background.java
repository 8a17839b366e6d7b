package withers.report.overview;

import java.util.List;
import withers.log.ImportMarker;
import withers.organisation.Directory;

/**
 * What an overview tells beside its run.
 *
 * @param network the network's name
 * @param markers the committed markers of the log; those of runs are passed over, and those of
 *     exports after the run's days
 * @param unnumbered records without a number
 * @param earlier figures of runs that judged earlier days, the oldest first
 */
public record Background(
    String network,
    Directory directory,
    List<ImportMarker> markers,
    Unnumbered unnumbered,
    List<RunFigures> earlier) {
  public Background {
    markers = List.copyOf(markers);
    earlier = List.copyOf(earlier);
  }
}
