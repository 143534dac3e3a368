package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.seams.Wishes;
import org.castwright.survey.Made;

/**
 * What the maker asks for. Immutable; start from {@link #DEFAULT} and change what differs through
 * {@link #with}.
 *
 * @param pull direction in the model's frame in which piece 1 leaves, or null to let the survey
 *     choose
 * @param pulls of single pieces in the order they leave, which fix that order too; none together
 *     with {@code pull}
 * @param wishes of the maker for the seams, in the model's frame, mm
 * @param material id in the material table
 * @param shrinkPercent linear shrink for each model axis in percent, or null for the material's own
 * @param wallMm wall round the cavity, or 0 for the rule by size and material
 * @param block outside shape
 * @param process printing process
 * @param clearanceMm gap between key and socket, or 0 for the process's own
 * @param keyShape form of the keys
 * @param keyCount number of keys, at least 3, or 0 to choose by size
 * @param closing how the mold is held together
 * @param pour position while filling
 * @param releaseMm width of a caught place that still counts as free
 * @param pieces most pieces the mold may have, 2 to 8
 * @param leaveMm3 space that may stay caught in a mold with side pieces, in creases that give or
 *     are scraped off, mm³
 * @param moldStrain strain that the mold's own material takes without harm, as a share; 0 for a
 *     rigid one
 * @param blockOutMm3 most that may be added to the casting to fill what two pieces would trap, so
 *     that two pieces do, mm³; 0 for none, {@link #BLOCK_OUT_AUTO} for a little and only where the
 *     mold asked for cannot be proved
 * @param blockedOut whether the model has been so filled: what is left in creases then counts as
 *     free up to {@code leaveMm3} and is left to the proof
 * @param allowCaught build even when trapped space is left
 * @param openings where gate and vents should be and how wide; null for all by rule
 * @param threads worker threads, at least 1
 */
public record MoldOptions(
    Vec3 pull,
    List<PiecePull> pulls,
    Wishes wishes,
    String material,
    Vec3 shrinkPercent,
    double wallMm,
    BlockShape block,
    PrintProcess process,
    double clearanceMm,
    KeyShape keyShape,
    int keyCount,
    Closing closing,
    Pour pour,
    double releaseMm,
    int pieces,
    double leaveMm3,
    double moldStrain,
    double blockOutMm3,
    boolean blockedOut,
    boolean allowCaught,
    Openings openings,
    int threads) {

  /** Fills a little, and only where the mold asked for cannot be proved. */
  public static final double BLOCK_OUT_AUTO = -1;

  /**
   * Plaster in a filament-printed box held by bands: the commonest job and the strictest release,
   * since plaster takes no strain at all. 5 mm³ is a crease of 0.15 mm and 30 mm or so: it crumbles
   * before it breaks anything. Release tolerance 0.05 mm, about a sixth of a print layer.
   */
  public static final MoldOptions DEFAULT =
      new MoldOptions(
          null,
          List.of(),
          Wishes.NONE,
          "plaster-pottery",
          null,
          0,
          BlockShape.BOX,
          PrintProcess.FDM,
          0,
          KeyShape.CONE,
          0,
          Closing.BANDS,
          Pour.SEAM,
          0.05,
          2,
          5,
          0,
          BLOCK_OUT_AUTO,
          false,
          false,
          Openings.BY_RULE,
          2);

  /** More pieces than this are not planned: nobody closes such a mold by hand. */
  public static final int MOST_PIECES = 8;

  /** Checks every value; the message of the exception says which is wrong and what is allowed. */
  public MoldOptions {
    openings = openings == null ? Openings.BY_RULE : openings;
    require(wallMm == 0 || (wallMm >= 2 && wallMm <= 100), "the wall must be 2 to 100 mm");
    require(clearanceMm >= 0 && clearanceMm <= 2, "the clearance must be 0 to 2 mm");
    require(keyCount == 0 || (keyCount >= 3 && keyCount <= 12), "the keys must be 3 to 12");
    require(releaseMm > 0 && releaseMm <= 1, "the release tolerance must be above 0 up to 1 mm");
    require(leaveMm3 >= 0 && leaveMm3 <= 1000, "the space left caught must be 0 to 1000 mm³");
    require(
        blockOutMm3 == BLOCK_OUT_AUTO || (blockOutMm3 >= 0 && Double.isFinite(blockOutMm3)),
        "the space to block out must be auto, none or a number of mm³");
    require(
        !(blockOutMm3 > 0) || wishes.all().isEmpty(),
        "a model that is blocked out opens in two pieces, which leave the seam no choice: give"
            + " wishes or block out, not both");
    require(moldStrain >= 0 && moldStrain <= 2, "the mold's strain must be 0 to 200 percent");
    require(pieces >= 2 && pieces <= MOST_PIECES, "the pieces must be 2 to 8");
    require(threads >= 1 && threads <= 64, "the threads must be 1 to 64");
    require(pull == null || pull.length() > 0, "the pull has no length");
    require(
        pieces > 2 || wishes.all().isEmpty(),
        "two opposite pieces leave the seam no choice: wishes need more pieces than 2");
    pulls = List.copyOf(pulls);
    require(pull == null || pulls.isEmpty(), "give one pull, or pulls of single pieces, not both");
    for (int i = 0; i < pulls.size(); i++) {
      check(pulls.get(i), pulls.subList(0, i), pieces);
    }
    require(
        pieces > 2 || pulls.isEmpty() || pullOfFirst(pull, pulls) != null,
        "two pieces leave in opposite directions: the pulls given need more pieces than 2");
  }

  private static void check(PiecePull p, List<PiecePull> before, int pieces) {
    require(
        p.piece() <= pieces,
        "a pull is given for piece "
            + p.piece()
            + ", but the mold may have at most "
            + pieces
            + " pieces; allow more");
    for (PiecePull o : before) {
      require(o.piece() != p.piece(), "the pull of piece " + p.piece() + " is given twice");
      require(
          o.direction().unit().dot(p.direction().unit()) < SAME,
          "pieces " + o.piece() + " and " + p.piece() + " are given the same pull");
    }
  }

  /**
   * The pull of piece 1 where the pulls given are those of two opposite pieces, else null.
   *
   * @return of any length
   */
  public Vec3 pullOfFirst() {
    return pullOfFirst(pull, pulls);
  }

  /** All pulls given, in the model's frame. */
  public List<Vec3> fixedPulls() {
    return pull != null ? List.of(pull) : pulls.stream().map(PiecePull::direction).toList();
  }

  /** For each of {@link #fixedPulls} its place in the order of leaving, from 1, or 0 for any. */
  public List<Integer> fixedPlaces() {
    return pull != null ? List.of(0) : pulls.stream().map(PiecePull::piece).toList();
  }

  private static Vec3 pullOfFirst(Vec3 pull, List<PiecePull> pulls) {
    if (pull != null || pulls.isEmpty()) {
      return pull;
    }
    Vec3 first = null;
    for (PiecePull p : pulls) {
      Vec3 d = p.piece() == 1 ? p.direction() : p.direction().negate();
      if (p.piece() > 2 || (first != null && first.unit().dot(d.unit()) < SAME)) {
        return null;
      }
      first = p.piece() == 1 || first == null ? d : first;
    }
    return first;
  }

  /** Directions whose cosine is more than this are the same: 0.0003°. */
  private static final double SAME = 1 - 1e-11;

  private static void require(boolean ok, String words) {
    if (!ok) {
      throw new IllegalArgumentException(words);
    }
  }

  /**
   * Whether undercuts of a model may be filled unasked where its mold cannot be proved: not where
   * the maker has settled pulls or seams, and not in a made thing, whose hollows have a purpose.
   */
  public boolean mayFill(TriMesh model) {
    return blockOutMm3 == BLOCK_OUT_AUTO
        && pieces > 2
        && fixedPulls().isEmpty()
        && wishes.all().isEmpty()
        && !allowCaught
        && !Made.of(model);
  }

  /** The gap in force, mm. */
  public double clearance() {
    return clearanceMm > 0 ? clearanceMm : process.clearanceMm();
  }

  /** A copy to change. */
  public With with() {
    return new With(this);
  }

  /** Changes some options and leaves the rest. */
  public static final class With {
    private Vec3 pull;
    private List<PiecePull> pulls;
    private Wishes wishes;
    private String material;
    private Vec3 shrinkPercent;
    private double wallMm;
    private BlockShape block;
    private PrintProcess process;
    private double clearanceMm;
    private KeyShape keyShape;
    private int keyCount;
    private Closing closing;
    private Pour pour;
    private double releaseMm;
    private int pieces;
    private double leaveMm3;
    private double moldStrain;
    private double blockOutMm3;
    private boolean blockedOut;
    private boolean allowCaught;
    private Openings openings;
    private int threads;

    private With(MoldOptions o) {
      pull = o.pull;
      pulls = o.pulls;
      wishes = o.wishes;
      material = o.material;
      shrinkPercent = o.shrinkPercent;
      wallMm = o.wallMm;
      block = o.block;
      process = o.process;
      clearanceMm = o.clearanceMm;
      keyShape = o.keyShape;
      keyCount = o.keyCount;
      closing = o.closing;
      pour = o.pour;
      releaseMm = o.releaseMm;
      pieces = o.pieces;
      leaveMm3 = o.leaveMm3;
      moldStrain = o.moldStrain;
      blockOutMm3 = o.blockOutMm3;
      blockedOut = o.blockedOut;
      allowCaught = o.allowCaught;
      openings = o.openings;
      threads = o.threads;
    }

    public With pull(Vec3 v) {
      pull = v;
      return this;
    }

    public With pulls(List<PiecePull> v) {
      pulls = v;
      return this;
    }

    public With wishes(Wishes v) {
      wishes = v;
      return this;
    }

    public With material(String v) {
      material = v;
      return this;
    }

    public With shrinkPercent(Vec3 v) {
      shrinkPercent = v;
      return this;
    }

    public With wallMm(double v) {
      wallMm = v;
      return this;
    }

    public With block(BlockShape v) {
      block = v;
      return this;
    }

    public With process(PrintProcess v) {
      process = v;
      return this;
    }

    public With clearanceMm(double v) {
      clearanceMm = v;
      return this;
    }

    public With keyShape(KeyShape v) {
      keyShape = v;
      return this;
    }

    public With keyCount(int v) {
      keyCount = v;
      return this;
    }

    public With closing(Closing v) {
      closing = v;
      return this;
    }

    public With pour(Pour v) {
      pour = v;
      return this;
    }

    public With releaseMm(double v) {
      releaseMm = v;
      return this;
    }

    public With pieces(int v) {
      pieces = v;
      return this;
    }

    public With leaveMm3(double v) {
      leaveMm3 = v;
      return this;
    }

    public With moldStrain(double v) {
      moldStrain = v;
      return this;
    }

    public With blockOutMm3(double v) {
      blockOutMm3 = v;
      return this;
    }

    public With blockedOut(boolean v) {
      blockedOut = v;
      return this;
    }

    public With allowCaught(boolean v) {
      allowCaught = v;
      return this;
    }

    public With openings(Openings v) {
      openings = v;
      return this;
    }

    public With threads(int v) {
      threads = v;
      return this;
    }

    public MoldOptions build() {
      return new MoldOptions(
          pull,
          pulls,
          wishes,
          material,
          shrinkPercent,
          wallMm,
          block,
          process,
          clearanceMm,
          keyShape,
          keyCount,
          closing,
          pour,
          releaseMm,
          pieces,
          leaveMm3,
          moldStrain,
          blockOutMm3,
          blockedOut,
          allowCaught,
          openings,
          threads);
    }
  }
}
