package org.cupbeam.track;

import org.cupbeam.green.GreenSpeed;
import org.cupbeam.green.Slope;
import org.cupbeam.rig.Rig;

/**
 * What the day's putts have taught about a lane, with its covariance: how far the green's friction is from its reading,
 * how far each beam stands from where the rig file says, and how much longer each receiver takes to clear than to
 * block. Every measured putt sharpens it; between putts it grows a little vague again, since greens dry and carpets warm.
 */
final class LaneBelief {
    /** A reading may be this far off, as a fraction (standard deviation). */
    private static final double READING_SD = 0.018;
    /** From putt to putt friction differs by this fraction (grain, line, the ball), until the putts tell. */
    private static final double PUTT_SD = 0.007;
    /** As many putts as that guess is worth. */
    private static final double PUTT_GUESS = 10;
    /** As many edges as the guess of their noise is worth, and how many putts are remembered at most. */
    private static final double NOISE_GUESS = 60;
    private static final double MEMORY = 400;
    private static final double QUIETEST = 0.3;
    private static final double LOUDEST = 50;
    private static final double DEFLECTED_SD = 0.15;
    /** Drift of the green per putt, as a fraction. */
    static final double DRIFT_SD = 0.0004;
    private static final double BEAM_SD_MM = 1.1;
    private static final double LAG_SD_S = 60e-6;

    /** Friction's share, then each beam's offset in mm, then each receiver's lag in s. */
    final int size;
    final double[] mean;
    final double[] covariance;
    private final int beams;
    private final double levelMmPerS2;
    private final double pullMmPerS2;
    private final double stimpFt;
    private double puttWeight = PUTT_GUESS;
    private double puttVariance = PUTT_SD * PUTT_SD;
    private double noiseWeight = NOISE_GUESS;
    private double noise = 1;

    LaneBelief(Rig rig) {
        stimpFt = rig.stimpFt();
        pullMmPerS2 = Slope.pullMmPerS2(rig.uphillPercent());
        levelMmPerS2 = GreenSpeed.decelerationMmPerS2(stimpFt, rig.uphillPercent()) - pullMmPerS2;
        beams = rig.beams().size();
        size = 1 + 2 * beams;
        mean = new double[size];
        covariance = new double[size * size];
        covariance[0] = READING_SD * READING_SD;
        for (int i = 0; i < beams; i++) {
            covariance[at(offset(i), offset(i))] = BEAM_SD_MM * BEAM_SD_MM;
            covariance[at(lag(i), lag(i))] = LAG_SD_S * LAG_SD_S;
        }
    }

    int at(int row, int column) {
        return row * size + column;
    }

    static int offset(int beam) {
        return 1 + beam;
    }

    int lag(int beam) {
        return 1 + beams + beam;
    }

    /** Friction's deceleration on this line at the green's reading, mm/s². */
    double levelMmPerS2() {
        return levelMmPerS2;
    }

    /** The deceleration to expect of the next putt, mm/s². */
    double decelerationMmPerS2() {
        return decelerationMmPerS2(mean[0]);
    }

    /** The deceleration on a green that is by this fraction slower than its reading, mm/s². */
    double decelerationMmPerS2(double slower) {
        return levelMmPerS2 * (1 + slower) + pullMmPerS2;
    }

    /** Standard deviation of that, mm/s². */
    double decelerationSd() {
        return levelMmPerS2 * Math.sqrt(covariance[0] + puttVariance);
    }

    /**
     * Standard deviation of the deceleration along the line of a ball that the rim has turned and set spinning, mm/s²: at
     * 35° off the line it is a fifth less.
     */
    double deflectedSd() {
        return DEFLECTED_SD * levelMmPerS2;
    }

    /** The green's reading as the putts have it, ft. */
    double stimpFt() {
        return stimpFt / (1 + mean[0]);
    }

    double stimpSdFt() {
        return stimpFt() * Math.sqrt(covariance[0]);
    }

    /**
     * Learns how much putts differ, from how far one's friction was from the lane's: a step of expectation-maximisation,
     * weighted by how much the putt could tell of it.
     *
     * @param deviation as a fraction
     * @param variance  what is unknown of it still
     */
    void learnSpread(double deviation, double variance) {
        double told = Math.max(0, 1 - variance / puttVariance);
        if (puttWeight < MEMORY) {
            puttWeight += told;
        }
        puttVariance += told / puttWeight * (deviation * deviation + variance - puttVariance);
    }

    /** How much noisier edges are than first guessed, as a ratio of variances. */
    double noise() {
        return noise;
    }

    /**
     * Learns how noisy edges are, from how well a putt's fitted.
     *
     * @param misfit  chi-square for each degree of freedom: 1 on average where the noise is guessed right
     * @param freedom how many degrees there were
     */
    void learnNoise(double misfit, int freedom) {
        noiseWeight = Math.min(MEMORY, noiseWeight + freedom);
        double step = freedom / noiseWeight * (Math.min(misfit, 4) - 1);
        noise = Math.min(LOUDEST, Math.max(QUIETEST, noise * (1 + step)));
    }

    /** Takes over what a putt has taught: the lower right block of its joint estimate. */
    void learn(double[] jointMean, double[] jointCovariance, int jointSize, int from) {
        for (int i = 0; i < size; i++) {
            mean[i] = jointMean[from + i];
            for (int j = 0; j < size; j++) {
                covariance[at(i, j)] = jointCovariance[(from + i) * jointSize + from + j];
            }
        }
        covariance[0] += DRIFT_SD * DRIFT_SD;
    }
}
