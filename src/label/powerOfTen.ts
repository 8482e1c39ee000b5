/** What a sheet shows after it has taken a code such as 1E234 for a power of ten, or rounded a long number. */
export const POWER_OF_TEN = /^\d+(?:[.,]\d+)?E\+\d+$|^\d+[.,]\d+E\d+$/;
