export default function Compare() {
  return null;
}
