// A phone's photo is made small enough to be sent from a field; what it knew of place and time goes.

const LONGEST_SIDE = 1600;

export async function smaller(photo) {
  const picture = await createImageBitmap(photo).catch(() => null);
  if (!picture) return photo;
  const share = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(picture.width * share);
  canvas.height = Math.round(picture.height * share);
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise(done => canvas.toBlob(blob => done(blob ?? photo), "image/jpeg", 0.8));
}
